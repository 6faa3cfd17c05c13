package main

import (
	"fmt"
	"io"
	"log/slog"
)

var levels = map[string]slog.Level{
	"debug": slog.LevelDebug, "info": slog.LevelInfo, "warn": slog.LevelWarn, "error": slog.LevelError,
}

func (c logConfig) level() (slog.Level, error) {
	l, ok := levels[c.Level]
	if !ok {
		return 0, fmt.Errorf("log.level is %q, want debug, info, warn or error", c.Level)
	}
	return l, nil
}

// logger returns a logger, whose level can be changed.
func (c logConfig) logger(w io.Writer) (*slog.Logger, *slog.LevelVar) {
	var level slog.LevelVar
	l, _ := c.level() // it was checked
	level.Set(l)
	options := &slog.HandlerOptions{Level: &level}
	if c.Format == "json" {
		return slog.New(slog.NewJSONHandler(w, options)), &level
	}
	return slog.New(slog.NewTextHandler(w, options)), &level
}
