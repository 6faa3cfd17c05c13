package main

import (
	"errors"

	"presshand/bot"
)

// writePicture draws an answer into a file, as the file's name says.
func writePicture(string, bot.Drawn) error {
	return hint(errors.New("no drawing"), "leave --picture out")
}
