package tui

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"

	"example.com/hangtape/sessions/demo"
)

// demoFile sees that the demo sessions are in dir and returns the path of the
// first one.
func demoFile(dir string) (string, error) {
	files := demo.Files()
	for _, f := range files {
		err := writeNew(filepath.Join(dir, f.Name), f.Data)
		if err != nil && !errors.Is(err, fs.ErrExist) {
			return "", err
		}
	}
	return filepath.Join(dir, files[0].Name), nil
}

func writeNew(path string, data []byte) error {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	return errors.Join(err, f.Close())
}
