// Package sessions is the session file and the folder of sessions: the only place
// that knows how a session is stored. It judges nothing. Lengths are millimetres,
// masses kilograms, forces kilonewtons, angles degrees; in a file the unit ends
// the key, and times are RFC 3339 (2026-04-18T09:12:00Z), dates 2026-04-18.
//
// To read files from anywhere, as `check` does:
//
//	f, err := sessions.ReadFile(name, stdin) // name may be "-"
//	report, err := f.Judge()                 // both errors are *FileError: file, line, key, found, accepted
//
// To edit in the folder, as the wizard does:
//
//	st, err := sessions.OpenStore(dir, now, entropy)
//	err = st.Ready()                // can be written: before the first question
//	ed, s, err := st.New()          // or st.Edit(path): *LockedError where another program edits it
//	err = ed.Save(s)                // after every answer; *ChangedError where another program wrote it
//	ed.Keep()                       // where nobody waits: the last good copy; Close does too
//	report, err := s.Judge()
//	err = ed.Close()
//
// Of a file that something damaged since:
//
//	good := st.LastGood(path)            // nil where there is no copy, or no damage
//	aside, err := st.TakeLastGood(path)  // what was there is kept in the file aside
//
// Save writes the session as it is at the time of the call. Where a command
// saves in the background while answers go on, give it s.Clone().
//
// What a key of the file may say (its unit, range, words) is told by Key and
// Keys, from the same table that reads and writes the file. A list that is nil
// was not asked for yet and has no key; one that is empty was skipped and is
// written as []. Both mean: not taken.
package sessions
