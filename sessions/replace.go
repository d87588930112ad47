package sessions

import (
	"bytes"
	"errors"
	"io/fs"
	"path/filepath"
)

// A replacement is what became of a file that was to be replaced.
type replacement int

const (
	asItWas replacement = iota
	replaced
	unsure // the rename failed, and what is there now cannot be read
)

// told says what became of the file at path where err went wrong.
func (r replacement) told(path string, err error) error {
	switch {
	case err == nil:
		return nil
	case r == replaced:
		return unreadable(path, err, "was saved, but a loss of power now might undo it: %s", reason(err))
	case r == unsure:
		return unreadable(path, err, "may or may not have been saved: %s", reason(err))
	}
	return unreadable(path, err, "could not be saved, the file is as it was: %s", reason(err))
}

// replace puts data in the place of the file at path. The temporary file is
// beside it so that the rename is one step; it is read back before the old file
// goes; the folder is synced so that the rename lasts.
func (st *Store) replace(path, tempPrefix string, data []byte) (replacement, error) {
	dir := filepath.Dir(path)
	temp, err := st.writeTemp(dir, tempPrefix, data)
	if err == nil {
		if became, err := st.rename(temp, path, data); became != replaced {
			_ = st.disk.Remove(temp) // else the next start clears it
			return became, err
		}
		return replaced, st.disk.SyncDir(dir)
	}
	if temp != "" {
		_ = st.disk.Remove(temp)
	}
	return asItWas, err
}

// rename puts the file temp, which holds data, in the place of the one at path. A
// rename may be done although the answer to it was lost, as on a network.
func (st *Store) rename(temp, path string, data []byte) (replacement, error) {
	err := st.disk.Rename(temp, path)
	if err == nil {
		return replaced, nil
	}
	switch now, readErr := readPlain(st.disk, path); {
	case readErr == nil && bytes.Equal(now, data):
		return replaced, nil
	case readErr == nil || errors.Is(readErr, fs.ErrNotExist):
		return asItWas, err
	}
	return unsure, err
}

// writeTemp writes data to a new file in dir, makes it last and reads it back.
func (st *Store) writeTemp(dir, prefix string, data []byte) (name string, err error) {
	f, err := st.disk.CreateTemp(dir, prefix+"*"+tempEnding)
	if err != nil {
		return "", err
	}
	if _, err = f.Write(data); err == nil {
		err = f.Sync()
	}
	if err = errors.Join(err, f.Close()); err != nil {
		return f.Name(), err
	}
	back, err := readPlain(st.disk, f.Name())
	if err == nil && !bytes.Equal(back, data) {
		err = errors.New("the disk gave back something else than was written")
	}
	return f.Name(), err
}
