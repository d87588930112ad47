package records

import (
	"bytes"
	"encoding/gob"
	"errors"
	"fmt"
	"hash/crc32"
	"os"
	"path/filepath"
	"runtime/debug"
	"strings"
	"time"

	"example.com/hangtape/sessions"
)

// The cache holds what was made of each file, beside the files: whoever copies,
// moves or removes the folder has all of it. It is never asked what a session
// says, only what was made of exactly these bytes by exactly this program under
// exactly these rules; in doubt the file is read again. A cache that is missing,
// damaged, in the way or of something else is as good as an empty one.
const (
	cacheDir    = ".cache"
	cacheName   = "list"
	cacheTemp   = cacheName + ".*.tmp"
	cacheFormat = 2       // rises with every change of row
	longestErr  = 4 << 10 // bytes of an error that is worth keeping
	leftover    = time.Hour
)

// CachePath is the folder of the cache, for those who remove traces.
func CachePath(st *sessions.Store) string { return filepath.Join(st.Dir(), cacheDir) }

// cached is the cache as it is on disk, after a line with its checksum.
type cached struct {
	Of    string // what made it: see madeBy
	Words []string
	Rows  []row // by name
}

// madeBy tells apart what must not read each other's caches: folders, programs,
// rules, and the school's limits and days until a re-check.
func madeBy(st *sessions.Store, school *sessions.School) string {
	s := &sessions.Session{}
	s.Fit.RecheckDays, s.Limits = school.RecheckDays, school.Limits
	made := []string{fmt.Sprint(cacheFormat), st.Dir(), s.RulesDigest()}
	if info, ok := debug.ReadBuildInfo(); ok {
		made = append(made, info.String())
	}
	if program, err := os.Executable(); err == nil {
		if info, err := os.Stat(program); err == nil {
			made = append(made, program, fmt.Sprint(info.Size(), info.ModTime().UnixNano()))
		}
	}
	return strings.Join(made, "\n")
}

// loadCache is the cache; an empty one where it is not to be used.
func loadCache(st *sessions.Store, of string) *cached {
	data, err := st.ReadBeside(filepath.Join(CachePath(st), cacheName))
	if err != nil {
		return &cached{}
	}
	sum, body, _ := bytes.Cut(data, []byte("\n"))
	var c cached
	if string(sum) != checksum(body) || gob.NewDecoder(bytes.NewReader(body)).Decode(&c) != nil || c.Of != of || !c.whole() {
		return &cached{}
	}
	return &c
}

// whole says whether every word of the rows is there.
func (c *cached) whole() bool {
	for i := range c.Rows {
		if !c.Rows[i].within(len(c.Words)) {
			return false
		}
	}
	return true
}

func checksum(body []byte) string { return fmt.Sprintf("%08x", crc32.ChecksumIEEE(body)) }

// A cacheWriter is a cache about to be replaced. It is opened before the files
// are read, so that the file system's own clock tells when that was.
type cacheWriter struct {
	disk   sessions.Files
	dir    string
	temp   sessions.TempFile
	opened time.Time
}

// openCache begins to replace the cache; nil means that there will be none, as in
// a folder that cannot be written.
func openCache(st *sessions.Store) *cacheWriter {
	cw := &cacheWriter{disk: st.Disk(), dir: CachePath(st)}
	if cw.disk.MkdirAll(cw.dir, 0o700) != nil {
		return nil
	}
	var err error
	if cw.temp, err = cw.disk.CreateTemp(cw.dir, cacheTemp); err != nil { // 0600
		return nil
	}
	info, err := cw.disk.Stat(cw.temp.Name())
	if err != nil {
		cw.drop()
		return nil
	}
	cw.opened = info.ModTime()
	cw.clear()
	return cw
}

// clear removes what programs that were killed left behind.
func (cw *cacheWriter) clear() {
	all, _ := cw.disk.ReadDir(cw.dir)
	for _, e := range all {
		if left, err := filepath.Match(cacheTemp, e.Name()); err != nil || !left {
			continue
		}
		name := filepath.Join(cw.dir, e.Name())
		if info, err := cw.disk.Stat(name); err == nil && cw.opened.Sub(info.ModTime()) > leftover {
			_ = cw.disk.Remove(name) // else the next one tries again
		}
	}
}

func (cw *cacheWriter) drop() {
	_ = cw.temp.Close()
	_ = cw.disk.Remove(cw.temp.Name()) // else cleared later
}

// keep replaces the cache by the entries of files. Of those that were missing in
// it, and were read since it was opened, it leaves out the ones that a later
// change might not show in. Where nothing new comes in and no old row is stale,
// nothing is written. Where writing fails the next list takes longer, no more.
func (cw *cacheWriter) keep(of string, files []sessions.Seen, entries []*Entry, missing []int, stale bool) {
	out := make([]bool, len(files))
	for _, i := range missing {
		out[i] = !keeps(entries[i]) || !files[i].Settled(cw.opened)
		stale = stale || !out[i]
	}
	if !stale {
		cw.drop()
		return
	}
	c, w := cached{Of: of, Rows: make([]row, 0, len(files))}, newWords()
	for i, e := range entries {
		if !out[i] {
			c.Rows = append(c.Rows, rowOf(files[i], e, w))
		}
	}
	c.Words = w.all
	var body bytes.Buffer
	err := gob.NewEncoder(&body).Encode(c)
	if err == nil {
		_, err = cw.temp.Write([]byte(checksum(body.Bytes()) + "\n"))
	}
	if err == nil {
		_, err = cw.temp.Write(body.Bytes())
	}
	if errors.Join(err, cw.temp.Close()) != nil || cw.disk.Rename(cw.temp.Name(), filepath.Join(cw.dir, cacheName)) != nil {
		cw.drop()
	}
}

// keeps says whether what e says follows from the bytes of its file: not so
// what the operating system said, or a fault of the program's own.
func keeps(e *Entry) bool {
	var file *sessions.FileError
	return e.Err == nil || errors.As(e.Err, &file) && file.Err == nil && len(file.Error()) <= longestErr
}

// entries are those of files that the cache still tells; nil for the others,
// which are missing. All are in the order of their names.
func (c *cached) entries(files []sessions.Seen) (all []*Entry, missing []int) {
	all = make([]*Entry, len(files))
	at := 0
	for i, f := range files {
		name := filepath.Base(f.Path)
		for at < len(c.Rows) && c.Rows[at].Name < name {
			at++
		}
		if at < len(c.Rows) && c.Rows[at].Name == name && c.Rows[at].seen(f.Path) == f {
			all[i] = c.Rows[at].entry(f.Path, c.Words)
		} else {
			missing = append(missing, i)
		}
	}
	return all, missing
}
