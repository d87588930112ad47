// Package demo holds the demo sessions. Their data are invented.
package demo

import (
	"embed"
	"io/fs"
)

//go:embed *.toml
var files embed.FS

// A File is one demo session as it stands on disk.
type File struct {
	Name string // of the file, without a folder
	Data []byte // TOML
}

// Files are the demo sessions, by name: a kit that fits, a main bridge that is
// too short, and a climber who has not left the ground yet.
func Files() []File {
	names, err := fs.Glob(files, "*.toml")
	if err != nil {
		panic("demo: bad pattern")
	}
	out := make([]File, len(names))
	for i, n := range names {
		data, err := files.ReadFile(n)
		if err != nil {
			panic("demo: a file that was embedded is missing")
		}
		out[i] = File{n, data}
	}
	return out
}
