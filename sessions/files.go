package sessions

import (
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"

	"github.com/gofrs/flock"
)

// Files is what the store asks of the operating system, so that a test can let
// any call fail.
type Files interface {
	Stat(name string) (fs.FileInfo, error)
	Open(name string) (io.ReadCloser, error)
	ReadDir(name string) ([]fs.DirEntry, error)
	MkdirAll(name string, mode fs.FileMode) error
	Chmod(name string, mode fs.FileMode) error
	CreateTemp(dir, pattern string) (TempFile, error)
	Rename(from, to string) error
	Remove(name string) error
	RemoveAll(name string) error
	EvalSymlinks(name string) (string, error)
	SyncDir(name string) error
	// Lock takes the lock file name, where nobody holds it, and writes into it who
	// does; else lock is nil, and heldBy what is written there, if anything.
	Lock(name, who string) (lock io.Closer, heldBy string, err error)
}

// A TempFile is a new file, open for writing, that only its owner may read.
type TempFile interface {
	io.WriteCloser
	Name() string
	Sync() error
}

// disk is the operating system itself.
type disk struct{}

func (disk) Stat(name string) (fs.FileInfo, error)        { return os.Stat(name) }
func (disk) Open(name string) (io.ReadCloser, error)      { return os.Open(name) }
func (disk) ReadDir(name string) ([]fs.DirEntry, error)   { return os.ReadDir(name) }
func (disk) MkdirAll(name string, mode fs.FileMode) error { return os.MkdirAll(name, mode) }
func (disk) Chmod(name string, mode fs.FileMode) error    { return os.Chmod(name, mode) }
func (disk) Rename(from, to string) error                 { return os.Rename(from, to) } //nolint:gosec // the paths are the owner's
func (disk) Remove(name string) error                     { return os.Remove(name) }

func (disk) RemoveAll(name string) error              { return os.RemoveAll(name) }
func (disk) EvalSymlinks(name string) (string, error) { return filepath.EvalSymlinks(name) }

func (disk) CreateTemp(dir, pattern string) (TempFile, error) { return os.CreateTemp(dir, pattern) }

func (disk) Lock(name, who string) (io.Closer, string, error) {
	lock := flock.New(name, flock.SetPermissions(0o600))
	switch held, err := lock.TryLock(); {
	case err != nil:
		return nil, "", err
	case !held:
		heldBy, _ := os.ReadFile(name)
		return nil, string(heldBy), nil
	}
	_ = os.WriteFile(name, []byte(who), 0o600) // only for the words of a LockedError
	return lock, "", nil
}

// SyncDir makes a rename in the folder last through a loss of power. Windows
// has no such call.
func (disk) SyncDir(name string) error {
	if runtime.GOOS == "windows" {
		return nil
	}
	d, err := os.Open(name)
	if err != nil {
		return err
	}
	defer d.Close()
	return d.Sync()
}
