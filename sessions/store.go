package sessions

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path/filepath"
	"strings"
	"sync"
	"time"

	"github.com/oklog/ulid/v2"
)

// DemoFolder is the folder in the sessions' folder where the demo climber's sessions
// are kept, apart from all others.
const DemoFolder = "demo"

// Ending ends the name of a session's file, after its id.
const Ending = ".toml"

const (
	schoolName = "school.toml"
	dirMode    = 0o700
)

// A Store is a folder of session files. The folder is the database: files may
// come from anywhere, and whatever is right in it counts. It may be used from
// several goroutines.
type Store struct {
	dir  string
	disk Files
	now  func() time.Time

	listing sync.Mutex

	ids     sync.Mutex
	entropy *ulid.MonotonicEntropy
	lastMS  uint64
}

// OpenStore makes the folder where it is missing, for its owner alone, and
// closes it to others where it is open to them. The clock and the source of
// randomness make the ids of new sessions. Errors say in words why the folder
// cannot be used.
func OpenStore(dir string, now func() time.Time, entropy io.Reader) (*Store, error) {
	return openStore(dir, now, entropy, disk{})
}

func openStore(dir string, now func() time.Time, entropy io.Reader, disk Files) (*Store, error) {
	st := &Store{dir: dir, disk: disk, now: now, entropy: ulid.Monotonic(entropy, 0)}
	if !filepath.IsAbs(dir) {
		return nil, unreadable(dir, nil, "is no full path; accepted for the sessions' folder is one that starts at the root, without ~")
	}
	info, err := disk.Stat(dir)
	if errors.Is(err, fs.ErrNotExist) {
		if err = makeFolder(disk, dir); err == nil {
			info, err = disk.Stat(dir)
		}
	}
	switch {
	case err != nil:
		return nil, unreadable(dir, err, "cannot be the sessions' folder: %s", reason(err))
	case !info.IsDir():
		return nil, unreadable(dir, nil, "is a file; the sessions need a folder")
	}
	return st, nil
}

// makeFolder makes the folder dir and those above it that are missing, and makes
// them last through a loss of power, as the first session in it has to.
func makeFolder(disk Files, dir string) error {
	missing := []string{dir}
	for up := filepath.Dir(dir); ; up = filepath.Dir(up) {
		if _, err := disk.Stat(up); !errors.Is(err, fs.ErrNotExist) {
			break
		}
		missing = append(missing, up)
	}
	if err := disk.MkdirAll(dir, dirMode); err != nil {
		return err
	}
	for _, made := range missing {
		// A folder in which we may make others need not be open for reading.
		if err := disk.SyncDir(filepath.Dir(made)); err != nil && !errors.Is(err, fs.ErrPermission) {
			return err
		}
	}
	return nil
}

// Listing waits for others who list the folder through st, until done: the next
// one finds what the one before kept of it.
func (st *Store) Listing() (done func()) {
	st.listing.Lock()
	return st.listing.Unlock
}

// Dir is the store's folder.
func (st *Store) Dir() string { return st.dir }

// Disk is where the store's folder is, for what is kept beside the sessions.
func (st *Store) Disk() Files { return st.disk }

// ReadBeside reads a file beside the sessions, whatever is in it and however
// large it is.
func (st *Store) ReadBeside(name string) ([]byte, error) {
	f, err := st.disk.Open(name)
	if err != nil {
		return nil, unreadable(name, err, "cannot be read: %s", reason(err))
	}
	defer f.Close()
	data, err := io.ReadAll(f)
	if err != nil {
		return nil, unreadable(name, err, "cannot be read: %s", reason(err))
	}
	return data, nil
}

// Ready makes sure that sessions can be written: the folder is closed to
// others, and a file can be made in it. It clears what programs that were killed
// left there. Call it before the first question.
func (st *Store) Ready() error {
	info, err := st.disk.Stat(st.dir)
	if err == nil && info.Mode().Perm()&0o077 != 0 {
		err = st.disk.Chmod(st.dir, dirMode)
	}
	if err != nil {
		return unreadable(st.dir, err, "cannot keep sessions to yourself: %s", reason(err))
	}
	f, err := st.disk.CreateTemp(st.dir, tryPrefix+"*"+tempEnding)
	if err == nil {
		err = f.Close()
		if gone := st.disk.Remove(f.Name()); !errors.Is(gone, fs.ErrNotExist) { // another program may have cleared it
			err = errors.Join(err, gone)
		}
	}
	if err != nil {
		return unreadable(st.dir, err, "cannot be written: %s", reason(err))
	}
	return st.clearLeftovers()
}

// School is the school's defaults, those of DefaultSchool where the folder has
// no school.toml.
func (st *Store) School() (*School, error) { return readSchool(st.disk, st.dir) }

func readSchool(disk Files, dir string) (*School, error) {
	name := filepath.Join(dir, schoolName)
	switch _, err := disk.Stat(name); {
	case errors.Is(err, fs.ErrNotExist):
		return DefaultSchool(), nil
	case err != nil:
		return nil, unreadable(name, err, "cannot be read: %s", reason(err))
	}
	data, err := readBytes(disk, name)
	if err != nil {
		return nil, err
	}
	return DecodeSchool(name, data)
}

// newID is an id that sorts after all earlier ones of this store, also when the
// clock jumps back.
func (st *Store) newID() (string, error) {
	st.ids.Lock()
	defer st.ids.Unlock()
	st.lastMS = max(st.lastMS, ulid.Timestamp(st.now()))
	id, err := ulid.New(st.lastMS, st.entropy)
	if err != nil {
		return "", fmt.Errorf("no new id: %w", err)
	}
	return id.String(), nil
}

// Load reads the session at path, which may lie outside the folder.
func (st *Store) Load(path string) (*File, error) {
	school, err := st.School()
	if err != nil {
		return nil, err
	}
	return st.LoadFor(path, school)
}

// LoadFor is Load for a school that is known already: for many files.
func (st *Store) LoadFor(path string, school *School) (*File, error) {
	f, err := readFile(st.disk, path)
	if err != nil {
		return nil, err
	}
	f.Session.Fit.RecheckDays = school.RecheckDays
	return f, nil
}

// inside are the files of the folder that should be sessions, and the folders in
// it that nobody hides but the demo's, by name.
func (st *Store) inside() (paths, folders []string, err error) {
	dir, err := st.disk.ReadDir(st.dir)
	if err != nil {
		return nil, nil, unreadable(st.dir, err, "cannot be read: %s", reason(err))
	}
	for _, e := range dir {
		switch name := e.Name(); {
		case strings.HasPrefix(name, ".") || name == schoolName || name == PiecesFile:
		case strings.HasSuffix(name, Ending):
			paths = append(paths, filepath.Join(st.dir, name))
		case e.IsDir() && name != DemoFolder:
			folders = append(folders, name)
		}
	}
	return paths, folders, nil
}
