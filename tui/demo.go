package tui

import (
	"errors"
	"io/fs"
	"path/filepath"

	"example.com/hangtape/sessions/demo"
)

// demoFile sees that the demo sessions are in dir and returns the path of the
// first one.
func demoFile(dir string) (string, error) {
	files := demo.Files()
	for _, f := range files {
		if _, err := f.Write(dir); err != nil && !errors.Is(err, fs.ErrExist) {
			return "", err
		}
	}
	return filepath.Join(dir, files[0].Name), nil
}
