package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
)

// writePrivate writes a file that only its owner may read, whole or not at all;
// one that is there is replaced, and what is no file, like a pipe, is written to.
func writePrivate(name string, data []byte) error {
	if info, err := os.Stat(name); err == nil && !info.Mode().IsRegular() {
		return cannotWrite(os.WriteFile(name, data, 0o600))
	}
	f, err := os.CreateTemp(filepath.Dir(name), ".sheet.*.tmp")
	if err != nil {
		return cannotWrite(err)
	}
	_, err = f.Write(data)
	if err = errors.Join(err, f.Close()); err == nil {
		err = os.Rename(f.Name(), name)
	}
	if err != nil {
		_ = os.Remove(f.Name())
	}
	return cannotWrite(err)
}

func cannotWrite(err error) error {
	if err == nil {
		return nil
	}
	return fmt.Errorf("cannot write the sheet: %w", err)
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
