package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"presshand/bot"
	"presshand/bot/picture"
)

// drawable refuses a name that no drawing is written under.
func (c *askCmd) drawable() error {
	switch strings.ToLower(filepath.Ext(c.Picture)) {
	case ".svg", ".png":
		return nil
	}
	if c.Picture == "" {
		return nil
	}
	return hint(fmt.Errorf("%s is no kind of drawing", filepath.Base(c.Picture)), "give --picture a name that ends in .svg or .png")
}

// writePicture writes a drawing into a file, in the form that its name says.
func writePicture(name string, d *picture.Drawing) error {
	data := d.SVG()
	if strings.EqualFold(filepath.Ext(name), ".png") {
		var err error
		if data, err = d.Screen(); err != nil {
			return hint(fmt.Errorf("drawing failed: %w", err), "try a name that ends in .svg")
		}
	}
	mode := fs.FileMode(0o644)
	if was, err := os.Stat(name); err == nil {
		mode = was.Mode().Perm()
	}
	return written(name, mode, func(w io.Writer) error {
		_, err := w.Write(data)
		return err
	})
}

// draw writes the drawing that was asked for.
func (a *asking) draw() error {
	if a.Picture == "" {
		return nil
	}
	d := a.latest()
	if d == nil {
		return hint(errors.New("no answer has a drawing"), "it takes a whole answer about side pressure, a stack, strips or a load")
	}
	return writePicture(a.Picture, d)
}

// sketches are the latest replies that may have a drawing. Which is the last
// that has one shows only when it is laid out, which takes longer than to
// answer; so it is done for the last of many.
type sketches struct {
	replies []bot.Reply
	drawing *picture.Drawing // of the last reply before those that has one
}

// maxSketches keeps the memory of a long run within bounds.
const maxSketches = 100

func (s *sketches) keep(r bot.Reply) {
	if len(r.Drawn) == 0 {
		return
	}
	if len(s.replies) == maxSketches {
		s.latest()
	}
	s.replies = append(s.replies, r)
}

// latest returns the drawing of the last reply that has one, or nil.
func (s *sketches) latest() *picture.Drawing {
	for len(s.replies) > 0 {
		last := len(s.replies) - 1
		if d, ok := s.replies[last].Draw(); ok {
			s.drawing, s.replies = d, nil
			break
		}
		s.replies = s.replies[:last]
	}
	return s.drawing
}
