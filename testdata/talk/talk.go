// Package talk holds the scenes that the program can play.
package talk

import "embed"

// Scenes are the conversations of this folder, as txtar archives.
//
//go:embed *.txtar
var Scenes embed.FS
