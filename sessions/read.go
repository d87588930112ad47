package sessions

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path/filepath"
)

// StdinName stands for standard input in place of a file's name.
const StdinName = "-"

// A File is a session with the bytes that it was read from.
type File struct {
	Name    string // path, or "-"
	Data    []byte
	Session *Session
}

// ReadFile reads one session file from anywhere; "-" reads stdin to its end.
// Where a school file lies beside it, its days until a re-check count. The
// error is a *FileError.
func ReadFile(name string, stdin io.Reader) (*File, error) {
	if name == StdinName {
		data, err := readAll(name, stdin)
		switch {
		case err != nil:
			return nil, err
		case len(data) == 0:
			return nil, empty(name)
		}
		return newFile(name, data)
	}
	f, err := readFile(disk{}, name)
	if err != nil {
		return nil, err
	}
	school, err := readSchool(disk{}, filepath.Dir(name))
	if err != nil {
		return nil, err
	}
	f.Session.Fit.RecheckDays = school.RecheckDays
	return f, nil
}

func newFile(name string, data []byte) (*File, error) {
	s, err := Decode(name, data)
	if err != nil {
		return nil, err
	}
	return &File{Name: name, Data: data, Session: s}, nil
}

func readFile(disk Files, name string) (*File, error) {
	data, err := readBytes(disk, name)
	if err != nil {
		return nil, err
	}
	return newFile(name, data)
}

// readBytes reads a plain file that is not empty, of no more than a session's size.
func readBytes(disk Files, name string) ([]byte, error) {
	data, err := readPlain(disk, name)
	if err == nil && len(data) == 0 {
		return nil, empty(name)
	}
	return data, err
}

func empty(name string) error {
	return unreadable(name, nil, "is empty; accepted is a session file")
}

// readPlain reads a plain file of no more than a session's size. Pipes, devices
// and folders are refused before they are opened, since they may never end.
func readPlain(disk Files, name string) ([]byte, error) {
	info, err := disk.Stat(name)
	if err != nil {
		return nil, unreadable(name, err, "cannot be read: %s", reason(err))
	}
	switch mode := info.Mode(); {
	case mode.IsDir():
		return nil, unreadable(name, nil, "is a folder; accepted is a session file")
	case !mode.IsRegular():
		return nil, unreadable(name, nil, "is no plain file; accepted is a session file, or - for standard input")
	case info.Size() > mostBytes:
		return nil, unreadable(name, nil, "has %d bytes; accepted is at most 256 kB", info.Size())
	}
	f, err := disk.Open(name)
	if err != nil {
		return nil, unreadable(name, err, "cannot be read: %s", reason(err))
	}
	defer f.Close()
	return readAll(name, f)
}

// readAll reads to the end but never much more than a session's size.
func readAll(name string, r io.Reader) ([]byte, error) {
	data, err := io.ReadAll(io.LimitReader(r, mostBytes+1))
	switch {
	case err != nil:
		return nil, unreadable(name, err, "cannot be read: %s", reason(err))
	case len(data) > mostBytes:
		return nil, unreadable(name, nil, "has more than 256 kB; accepted is at most that")
	}
	return data, nil
}

// reason is the operating system's error without the path, which stands before
// it already.
func reason(err error) string {
	var path *fs.PathError
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "there is no such file"
	case errors.Is(err, fs.ErrPermission):
		return "its permissions do not allow it"
	case errors.As(err, &path):
		return path.Err.Error()
	}
	return fmt.Sprint(err)
}
