// Package demo holds the demo sessions. Their data are invented.
package demo

import (
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

//go:embed *.toml
var files embed.FS

// A File is one demo session as it stands on disk.
type File struct {
	Name string // of the file, without a folder
	Data []byte // TOML
}

// Files are the demo sessions, by name: a kit that fits, a main bridge that is
// too short, a climber who has not left the ground yet, and the first climber
// again half a year later, on a tether that has crept.
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

// Write puts f into the folder dir, which must be there, and returns its path.
// The file must not be there yet (fs.ErrExist); one that could not be written
// whole is taken away again.
func (f File) Write(dir string) (path string, err error) {
	path = filepath.Join(dir, f.Name)
	file, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return path, fmt.Errorf("cannot write the demo: %w", err)
	}
	_, err = file.Write(f.Data)
	if err := errors.Join(err, file.Close()); err != nil {
		_ = os.Remove(path)
		return path, fmt.Errorf("cannot write the demo: %w", err)
	}
	return path, nil
}
