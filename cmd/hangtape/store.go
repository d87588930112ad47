package main

import (
	"crypto/rand"

	"github.com/adrg/xdg"

	"example.com/hangtape/sessions"
)

// sessionsDir is the folder in which the sessions live.
func sessionsDir(w *world) string { return sessions.DefaultDir(w.env("HANGTAPE_DIR"), xdg.DataHome) }

// openStore opens the sessions' folder, which is made where it is missing.
func openStore(w *world) (*sessions.Store, error) {
	return sessions.OpenStore(sessionsDir(w), w.now, rand.Reader)
}
