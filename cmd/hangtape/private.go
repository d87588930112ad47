package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// writePrivate writes a file that only its owner may read, whole or not at all;
// one that is there is replaced, and what is no file, like a pipe, is written to.
func writePrivate(name string, data []byte) error {
	if info, err := os.Stat(name); err == nil && !info.Mode().IsRegular() {
		return cannotWrite(name, os.WriteFile(name, data, 0o600))
	}
	f, err := os.CreateTemp(filepath.Dir(name), ".sheet.*.tmp")
	if err != nil {
		return cannotWrite(name, err)
	}
	_, err = f.Write(data)
	if err = errors.Join(err, f.Close()); err == nil {
		err = os.Rename(f.Name(), name)
	}
	if err != nil {
		_ = os.Remove(f.Name())
	}
	return cannotWrite(name, err)
}

// cannotWrite names the file that was asked for, in place of the temporary one
// that the operating system was.
func cannotWrite(name string, err error) error {
	if err == nil {
		return nil
	}
	if path := (*fs.PathError)(nil); errors.As(err, &path) {
		err = path.Err
	}
	return fmt.Errorf("cannot write the sheet to %s: %w", name, err)
}

// sameFile says whether two names are of one file that is there.
func sameFile(a, b string) bool {
	x, err := os.Stat(a)
	if err != nil {
		return false
	}
	y, err := os.Stat(b)
	return err == nil && os.SameFile(x, y)
}
