package sessions

import (
	"maps"
	"strings"
	"time"
)

// Memory is the disk of tests for those that keep things beside the sessions.
type Memory struct{ m *memory }

// NewMemory is an empty disk.
func NewMemory() Memory { return Memory{newMemory(memoryHome)} }

// Store opens the folder of sessions.
func (d Memory) Store() (*Store, error) { return storeOn(d.m) }

// Copy is a disk with the same on it that has lasted.
func (d Memory) Copy() Memory {
	c := newMemory(memoryHome)
	for path, n := range d.m.names {
		made := *n
		made.synced = made.data
		c.names[path] = &made
	}
	c.lasts, c.clock = maps.Clone(c.names), d.m.clock
	return Memory{c}
}

// Put writes a file that lasts.
func (d Memory) Put(path string, data []byte) { d.m.put(path, data) }

// Folder makes a folder that lasts.
func (d Memory) Folder(path string) {
	d.m.names[path] = &node{folder: true, mode: 0o700}
	d.m.lasts[path] = d.m.names[path]
}

// Later moves the clock on.
func (d Memory) Later(by time.Duration) {
	if d.m.clock.IsZero() {
		d.m.clock = noon()
	}
	d.m.clock = d.m.clock.Add(by)
}

// Fail lets the calls from the n-th on fail with err, all or the first alone; n
// below 1 is none. It counts anew.
func (d Memory) Fail(n int, forGood bool, err error) {
	d.m.calls, d.m.fault = 0, nil
	if n > 0 {
		d.m.fault = func(call int, _ string) error {
			if call == n || forGood && call > n {
				return err
			}
			return nil
		}
	}
}

// Calls is how many there were since Fail.
func (d Memory) Calls() int { return d.m.calls }

// LosePower leaves what was synced, and with names those of files that were not.
func (d Memory) LosePower(names bool) { d.m.fault = nil; d.m.losePower(names) }

// Files are all files with what is in them.
func (d Memory) Files() map[string]string {
	all := map[string]string{}
	for path, n := range d.m.names {
		if !n.folder {
			all[path] = string(n.data)
		}
	}
	return all
}

// Holding are the files whose text has a word in it, locks left out.
func (d Memory) Holding(word string) (paths []string) {
	for path, text := range d.Files() {
		if strings.Contains(text, word) {
			paths = append(paths, path)
		}
	}
	return paths
}

// Locked is how many locks are held.
func (d Memory) Locked() int { return len(d.m.locked) }

// Long asks for all that can be tried.
var Long = long

// DiskFaults are what a call can fail with.
func DiskFaults() (all []error) {
	for _, f := range diskFaults {
		all = append(all, f.err)
	}
	return all
}
