package main

import (
	"crypto/rand"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/records"
)

// sessionsDir is the folder in which the sessions live.
func sessionsDir(w *world) string { return sessions.DefaultDir(w.env("HANGTAPE_DIR"), w.dataHome) }

// openStore opens the sessions' folder, which is made where it is missing.
func openStore(w *world) (*sessions.Store, error) {
	return storeIn(w, sessionsDir(w))
}

// openDemoStore opens the demo's own folder inside that of the sessions, whose
// list does not look there.
func openDemoStore(w *world) (*sessions.Store, error) {
	return storeIn(w, filepath.Join(sessionsDir(w), sessions.DemoFolder))
}

// openFolder opens the folder of sessions called dir, which has to be there, or
// one's own.
func openFolder(w *world, dir string) (*sessions.Store, error) {
	if dir == "" {
		return openStore(w)
	}
	full, err := filepath.Abs(dir)
	if err == nil {
		_, err = os.Stat(full)
	}
	if err != nil {
		return nil, fmt.Errorf("no folder of sessions: %w", err)
	}
	return storeIn(w, full)
}

// scanOwn lists the sessions' folder; one that is not there yet is not made for a
// question.
func scanOwn(w *world) (*sessions.Store, *records.List, error) {
	if _, err := os.Stat(sessionsDir(w)); errors.Is(err, fs.ErrNotExist) {
		return nil, &records.List{}, nil
	}
	store, err := openStore(w)
	if err != nil {
		return nil, nil, err
	}
	list, err := records.Scan(store)
	return store, list, err
}

func storeIn(w *world, dir string) (*sessions.Store, error) {
	return sessions.OpenStore(dir, w.now, rand.Reader)
}
