package forget

import (
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"

	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/records"
)

// Done is what came of forgetting.
type Done struct {
	Sessions, Links, Leftover, Copies []string // files removed, or rewritten without what led to the climber
	Cache                             bool     // the list's cache was there and is gone
	Failed                            []error  // what is still there, and why
}

// Remove removes the traces. A file that cannot be removed, that another program
// edits or that is no longer what was found stops nothing.
func (t *Traces) Remove() *Done {
	d := &Done{}
	for _, path := range t.Leftover { // first: a session's removal clears some of them
		d.note(&d.Leftover, path, t.clear(sessions.BelongsTo(path), path))
	}
	for _, path := range t.Copies { // before the links, of which copies are kept anew
		d.note(&d.Copies, path, t.clear(sessions.BelongsTo(path), path))
	}
	for _, path := range t.Links {
		d.note(&d.Links, path, t.removeLinks(path))
	}
	for _, path := range t.Sessions {
		d.note(&d.Sessions, path, t.store.Remove(path, t.still))
	}
	cache := records.CachePath(t.store)
	err := t.removeCache(cache)
	d.Cache = err == nil
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		d.Failed = append(d.Failed, fmt.Errorf("%s: the cache cannot be removed: %w", cache, err))
	}
	return d
}

// removeCache removes the cache so that a loss of power does not bring it back;
// fs.ErrNotExist where there is none.
func (t *Traces) removeCache(cache string) error {
	disk := t.store.Disk()
	if _, err := disk.Stat(cache); err != nil {
		return err
	}
	if err := disk.RemoveAll(cache); err != nil {
		return err
	}
	return disk.SyncDir(filepath.Dir(cache))
}

func (d *Done) note(gone *[]string, path string, err error) {
	if err != nil {
		d.Failed = append(d.Failed, err)
		return
	}
	*gone = append(*gone, path)
}

// still says whether data is a session of the climber's.
func (t *Traces) still(data []byte) bool {
	s, err := sessions.Decode("", data)
	return err == nil && t.is(s.Climber)
}

// removeLinks rewrites another's session without what leads to the climber.
func (t *Traces) removeLinks(path string) error {
	ed, s, err := t.store.Edit(path)
	if err != nil {
		return err
	}
	if t.unlink(s) {
		err = ed.Save(s)
	}
	return errors.Join(err, ed.Close())
}

// clear removes what is kept or was left of a session, path with it, unless the
// session is being edited: then it may be in use.
func (t *Traces) clear(session, path string) error {
	err := t.store.Clear(session)
	if _, gone := t.store.Disk().Stat(path); err == nil && !errors.Is(gone, fs.ErrNotExist) {
		err = fmt.Errorf("%s: is still there", path)
	}
	return err
}
