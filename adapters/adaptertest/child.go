package adaptertest

import (
	"context"

	"presshand/bot/book"
)

// Open opens a store by the name that its kind goes by: a path, a URL.
type Open func(ctx context.Context, name string) (book.Store, error)

func Child(open Open) {}
