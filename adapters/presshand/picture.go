package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"presshand/bot/picture"
)

// writePicture writes a drawing into a file, in the form that its name says.
func writePicture(name string, d *picture.Drawing) error {
	var data []byte
	switch strings.ToLower(filepath.Ext(name)) {
	case ".svg":
		data = d.SVG()
	case ".png":
		var err error
		if data, err = d.PNG(d.Pixels()); err != nil {
			return hint(fmt.Errorf("drawing failed: %w", err), "try a name that ends in .svg")
		}
	default:
		return hint(fmt.Errorf("%s is no kind of drawing", filepath.Base(name)), "give --picture a name that ends in .svg or .png")
	}
	if err := os.WriteFile(name, data, 0o644); err != nil {
		return hint(fmt.Errorf("drawing cannot be written: %w", err), "name a file in a folder that you can write to")
	}
	return nil
}

// draw writes the drawing that was asked for.
func (a *asking) draw() error {
	switch {
	case a.Picture == "":
		return nil
	case a.drawing == nil:
		return hint(errors.New("no answer has a drawing"), "it takes a whole answer about side pressure, a stack, strips or a load")
	}
	return writePicture(a.Picture, a.drawing)
}
