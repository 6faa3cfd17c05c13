package engine

import "presshand/engine/plan"

// watched lets a plan be looked for as long as the question has it.
func watched[T any](b *builder) plan.Watch[T] {
	if b.q.GoOn == nil {
		return nil
	}
	return func(_, _ T) bool {
		b.stopped = b.stopped || !b.q.GoOn()
		return !b.stopped
	}
}
