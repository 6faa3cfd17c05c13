package desk

import (
	"context"
	"errors"
	"maps"
	"slices"
	"time"
)

// sendNext sends the next reply, or returns book.ErrNone.
func (d *Desk) sendNext(ctx context.Context) error {
	o, err := d.Store.ClaimOutgoing(ctx, d.claim(), slices.Sorted(maps.Keys(d.Senders)))
	if err != nil {
		return err
	}
	ref, err := d.Senders[o.Place.Service].Send(ctx, o)
	var wait *WaitError
	switch {
	case err == nil:
		return d.Store.Sent(ctx, o.Key, ref, d.Clock())
	case errors.Is(err, ErrRefused):
		d.Log.Error("desk: reply given up", "service", o.Place.Service, "error", err)
		return d.Store.RetryOutgoing(ctx, o.Key, time.Time{}, err.Error())
	case errors.As(err, &wait):
		return d.Store.RetryOutgoing(ctx, o.Key, d.Clock().Add(wait.After), err.Error())
	}
	after := backoff(o.Tries+1, roomWait)
	d.Log.Warn("desk: reply not sent", "service", o.Place.Service, "tries", o.Tries+1, "again_in", after, "error", err)
	// the step may have run out of time; giving back must not fail for that
	ctx, cancel := context.WithTimeout(context.WithoutCancel(ctx), d.Lease/3)
	defer cancel()
	return d.Store.RetryOutgoing(ctx, o.Key, d.Clock().Add(after), err.Error())
}
