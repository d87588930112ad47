package sessions

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"maps"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"time"
)

// memory is a file system that counts every call, can be told to let any of them
// fail, and knows what a loss of power would leave: of a file what was synced, of
// a folder the names that were synced.
type memory struct {
	names  map[string]*node // as programs see it, by path
	lasts  map[string]*node // the names that outlast a loss of power
	locked map[string]bool
	temps  int
	clock  time.Time // of what is made next

	mu    sync.Mutex
	calls int
	fault func(call int, op string) error // nil lets the call be
	half  func(call int) (silent, yes bool)
}

type node struct {
	folder bool
	mode   fs.FileMode
	data   []byte
	synced []byte
	made   time.Time
}

// powerLoss is what a memory panics with when the power goes.
type powerLoss struct{}

// newMemory has the folder home and nothing else.
func newMemory(home string) *memory {
	m := &memory{names: map[string]*node{}, lasts: map[string]*node{}, locked: map[string]bool{}}
	for dir := home; ; dir = filepath.Dir(dir) {
		m.names[dir] = &node{folder: true, mode: 0o700}
		m.lasts[dir] = m.names[dir]
		if dir == filepath.Dir(dir) {
			return m
		}
	}
}

// losePower leaves what was synced. With names, those of folders last although
// they were not synced, and files may have lost what is in them.
func (m *memory) losePower(names bool) {
	if !names {
		m.names = maps.Clone(m.lasts)
	}
	for path, n := range m.names {
		if m.names[filepath.Dir(path)] == nil {
			delete(m.names, path) // its folder went
		}
		n.data = n.synced
	}
	m.lasts, m.locked = maps.Clone(m.names), map[string]bool{}
}

func (m *memory) call(op, path string) error {
	m.calls++
	if m.fault == nil {
		return nil
	}
	if err := m.fault(m.calls, op); err != nil {
		return &fs.PathError{Op: op, Path: path, Err: err}
	}
	return nil
}

func (m *memory) find(op, path string) (*node, error) {
	if err := m.call(op, path); err != nil {
		return nil, err
	}
	if n := m.names[path]; n != nil {
		return n, nil
	}
	return nil, &fs.PathError{Op: op, Path: path, Err: fs.ErrNotExist}
}

// hold keeps other goroutines off until the function that it returns is called.
func (m *memory) hold() func() {
	m.mu.Lock()
	return m.mu.Unlock
}

func (m *memory) Stat(path string) (fs.FileInfo, error) {
	defer m.hold()()
	n, err := m.find("stat", path)
	if err != nil {
		return nil, err
	}
	return nodeInfo{filepath.Base(path), n}, nil
}

func (m *memory) Open(path string) (io.ReadCloser, error) {
	defer m.hold()()
	n, err := m.find("open", path)
	if err != nil {
		return nil, err
	}
	return &memoryFile{m: m, path: path, n: n, r: bytes.NewReader(n.data)}, nil
}

func (m *memory) ReadDir(path string) ([]fs.DirEntry, error) {
	defer m.hold()()
	if _, err := m.find("readdir", path); err != nil {
		return nil, err
	}
	var list []fs.DirEntry
	for _, name := range slices.Sorted(maps.Keys(m.names)) {
		if filepath.Dir(name) == path && name != path {
			list = append(list, fs.FileInfoToDirEntry(nodeInfo{filepath.Base(name), m.names[name]}))
		}
	}
	return list, nil
}

func (m *memory) MkdirAll(path string, mode fs.FileMode) error {
	defer m.hold()()
	if err := m.call("mkdir", path); err != nil {
		return err
	}
	for ; m.names[path] == nil; path = filepath.Dir(path) {
		m.names[path] = &node{folder: true, mode: mode}
	}
	return nil
}

func (m *memory) Chmod(path string, mode fs.FileMode) error {
	defer m.hold()()
	n, err := m.find("chmod", path)
	if err == nil {
		n.mode = mode
	}
	return err
}

func (m *memory) CreateTemp(dir, pattern string) (TempFile, error) {
	defer m.hold()()
	m.temps++
	path := filepath.Join(dir, strings.Replace(pattern, "*", strconv.Itoa(m.temps), 1))
	if err := m.call("create", path); err != nil {
		return nil, err
	}
	m.names[path] = &node{mode: 0o600, made: m.clock}
	return &memoryFile{m: m, path: path, n: m.names[path]}, nil
}

// Rename does what it is asked where the fault is errDone, and still says that it
// failed.
func (m *memory) Rename(from, to string) error {
	defer m.hold()()
	n, err := m.find("rename", from)
	if errors.Is(err, errDone) {
		n = m.names[from]
	}
	if n != nil {
		m.names[to] = n
		delete(m.names, from)
	}
	return err
}

var errDone = errors.New("the server did not answer")

func (m *memory) Remove(path string) error {
	defer m.hold()()
	_, err := m.find("remove", path)
	if err == nil {
		delete(m.names, path)
	}
	return err
}

// RemoveAll removes a folder with what is in it, one name after the other, which
// a fault ends half-way.
func (m *memory) RemoveAll(path string) error {
	defer m.hold()()
	for _, name := range slices.Backward(slices.Sorted(maps.Keys(m.names))) {
		if name != path && !strings.HasPrefix(name, path+"/") {
			continue
		}
		if err := m.call("removeall", name); err != nil {
			return err
		}
		delete(m.names, name)
	}
	return nil
}

func (m *memory) EvalSymlinks(path string) (string, error) {
	defer m.hold()()
	_, err := m.find("evalsymlinks", path)
	return path, err
}

func (m *memory) SyncDir(dir string) error {
	defer m.hold()()
	if _, err := m.find("syncdir", dir); err != nil {
		return err
	}
	for path := range m.lasts {
		if filepath.Dir(path) == dir && m.names[path] == nil {
			delete(m.lasts, path)
		}
	}
	for path, n := range m.names {
		if filepath.Dir(path) == dir {
			m.lasts[path] = n
		}
	}
	return nil
}

func (m *memory) Lock(path, _ string) (io.Closer, string, error) {
	defer m.hold()()
	if err := m.call("lock", path); err != nil {
		return nil, "", err
	}
	if m.locked[path] {
		return nil, "somebody", nil
	}
	m.locked[path] = true
	return memoryLock{m, path}, "", nil
}

type memoryLock struct {
	m    *memory
	path string
}

// Close gives the lock back even where it fails, as the end of a program does.
func (l memoryLock) Close() error {
	defer l.m.hold()()
	delete(l.m.locked, l.path)
	return l.m.call("unlock", l.path)
}

// memoryFile is an open file: for reading where it has an r.
type memoryFile struct {
	m    *memory
	path string
	n    *node
	r    *bytes.Reader
}

func (f *memoryFile) Name() string { return f.path }

func (f *memoryFile) Read(b []byte) (int, error) {
	defer f.m.hold()()
	if err := f.m.call("read", f.path); err != nil {
		return 0, err
	}
	return f.r.Read(b)
}

func (f *memoryFile) Write(b []byte) (int, error) {
	defer f.m.hold()()
	err := f.m.call("write", f.path)
	if err != nil {
		return 0, err
	}
	if f.m.half != nil {
		if silent, yes := f.m.half(f.m.calls); yes {
			f.n.data = append(f.n.data, b[:len(b)/2]...)
			if silent {
				return len(b), nil
			}
			return len(b) / 2, io.ErrShortWrite
		}
	}
	f.n.data = append(f.n.data, b...)
	return len(b), nil
}

func (f *memoryFile) Sync() error {
	defer f.m.hold()()
	err := f.m.call("sync", f.path)
	if err == nil {
		f.n.synced = slices.Clone(f.n.data)
	}
	return err
}

func (f *memoryFile) Close() error {
	defer f.m.hold()()
	return f.m.call("close", f.path)
}

type nodeInfo struct {
	name string
	n    *node
}

func (i nodeInfo) Name() string       { return i.name }
func (i nodeInfo) Size() int64        { return int64(len(i.n.data)) }
func (i nodeInfo) IsDir() bool        { return i.n.folder }
func (i nodeInfo) ModTime() time.Time { return i.n.made }
func (i nodeInfo) Sys() any           { return nil }
func (i nodeInfo) Mode() fs.FileMode {
	if i.n.folder {
		return i.n.mode | fs.ModeDir
	}
	return i.n.mode
}
