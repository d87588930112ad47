package main

import (
	"crypto/rand"
	"path/filepath"

	"example.com/hangtape/sessions"
)

// sessionsDir is the folder in which the sessions live.
func sessionsDir(w *world) string { return sessions.DefaultDir(w.env("HANGTAPE_DIR"), w.dataHome) }

// openStore opens the sessions' folder, which is made where it is missing.
func openStore(w *world) (*sessions.Store, error) {
	return sessions.OpenStore(sessionsDir(w), w.now, rand.Reader)
}

// openDemoStore opens the demo's own folder inside that of the sessions, whose
// list does not look there.
func openDemoStore(w *world) (*sessions.Store, error) {
	return sessions.OpenStore(filepath.Join(sessionsDir(w), sessions.DemoFolder), w.now, rand.Reader)
}

func openStoreAt(w *world, dir string) (*sessions.Store, error) {
	return sessions.OpenStore(dir, w.now, rand.Reader)
}
