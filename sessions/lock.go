package sessions

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"time"
)

// lockDir is the folder of the locks, beside the files.
const lockDir = ".locks"

// LocksPath is the folder of the locks: their names are the files', and all that
// stands in them is which process holds them.
func (st *Store) LocksPath() string { return filepath.Join(st.dir, lockDir) }

// A LockedError says that another program is editing the session. Load still
// reads it.
type LockedError struct {
	Path   string
	Holder string // who said to hold it: "process 4242 since 2026-04-18T09:12:00Z"; may be empty
}

func (e *LockedError) Error() string { return e.Path + ": " + e.Words() }

// Words is the error without the file.
func (e *LockedError) Words() string {
	who := e.Holder
	if who == "" {
		who = "another program"
	}
	return fmt.Sprintf("is being edited by %s; until that ends it can be read only", who)
}

// lockOf is the lock of the file at path, a file of its own that is never renamed,
// and removed only where the file is gone for good.
func lockOf(path string) string {
	return filepath.Join(filepath.Dir(path), lockDir, filepath.Base(path)+".lock")
}

// takeLock takes the lock of the file at path; it is nil where heldBy holds it.
func (st *Store) takeLock(path string) (lock io.Closer, heldBy string, err error) {
	name := lockOf(path)
	dir := filepath.Dir(name)
	if err := st.disk.MkdirAll(dir, dirMode); err != nil {
		return nil, "", unreadable(dir, err, "cannot be made: %s", reason(err))
	}
	who := fmt.Sprintf("process %d since %s\n", os.Getpid(), st.now().UTC().Format(time.RFC3339))
	lock, heldBy, err = st.disk.Lock(name, who)
	if err != nil {
		return nil, "", unreadable(name, err, "cannot be locked: %s", reason(err))
	}
	return lock, heldBy, nil
}
