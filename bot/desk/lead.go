package desk

import (
	"context"
	"time"

	"presshand/bot/book"
)

// Lead runs f whenever this process is the one that holds the lease of this
// name, until ctx is done. The context of f ends when the lease is lost. After
// a leader's death another leads within d.Reign and a quarter of it.
func (d *Desk) Lead(ctx context.Context, name string, f func(context.Context)) {
	d.init()
	for ctx.Err() == nil {
		if held, _ := d.holds(ctx, name); held {
			d.reign(ctx, name, f)
		}
		pause(ctx, d.Reign/4)
	}
}

// reign runs f and renews the lease beside it.
func (d *Desk) reign(ctx context.Context, name string, f func(context.Context)) {
	reign, abdicate := context.WithCancel(ctx)
	defer abdicate()
	done := make(chan struct{})
	go func() { defer close(done); f(reign) }()
	renewed := d.Clock()
	for {
		select {
		case <-done:
			d.release(ctx, name)
			return
		case <-time.After(d.Reign / 4):
		case <-ctx.Done():
		}
		if ctx.Err() != nil {
			<-done
			d.release(ctx, name)
			return
		}
		held, sure := d.holds(ctx, name)
		if held {
			renewed = d.Clock()
		}
		// another leads already, or may from the lease's end on
		if sure && !held || d.Clock().Sub(renewed) >= d.Reign*3/4 {
			d.Log.Warn("desk: lease lost", "lease", name)
			abdicate()
			<-done
			return
		}
	}
}

// holds takes or renews the lease, within the time of one beat; sure is false
// when the store did not answer.
func (d *Desk) holds(ctx context.Context, name string) (held, sure bool) {
	ctx, cancel := context.WithTimeout(ctx, d.Reign/4)
	defer cancel()
	held, err := d.Store.Hold(ctx, name, book.Claim{Worker: d.Worker, Now: d.Clock(), For: d.Reign})
	if err != nil && ctx.Err() == nil {
		d.Log.Warn("desk: lease not renewed", "lease", name, "error", err)
	}
	return held && err == nil, err == nil
}

func (d *Desk) release(ctx context.Context, name string) {
	ctx, cancel := context.WithTimeout(context.WithoutCancel(ctx), time.Second)
	defer cancel()
	if err := d.Store.Release(ctx, name, d.Worker); err != nil {
		d.Log.Warn("desk: lease not released", "lease", name, "error", err)
	}
}

func pause(ctx context.Context, t time.Duration) {
	select {
	case <-ctx.Done():
	case <-time.After(t):
	}
}
