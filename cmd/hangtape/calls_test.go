package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// A call of the command line that is off, or meets a file that is.
type oddCall struct {
	args string // by blanks; EX is an example session, BAD a file that is none, NO no file, SPACE the folder; _ is an empty word, ESC the sign that starts a terminal's command, NL a new line
	exit int
	says string // on standard error, or on standard output where the exit is none of a call
}

var oddCalls = []oddCall{
	{"check", exitUsage, "check needs a FILE"},
	{"check _", exitUsage, "got an empty word"},
	{"check EX _", exitUsage, "got an empty word"},
	{"check NO", exitFile, "there is no such file"},
	{"check aNLb", exitFile, `"a\nb": cannot be read`},
	{"check ESC[2J", exitFile, `\x1b[2J`},
	{"check " + strings.Repeat("a", 5000), exitFile, "file name too long"},
	{"check SPACE", exitFile, "is a folder"},
	{"check - -", exitUsage, "can be read once"},
	{"check -", exitFile, "-: is empty"},
	{"check --unit furlong EX", exitUsage, "accepted is mm, cm or in"},
	{"check --unit _ EX", exitUsage, "accepted is mm, cm or in"},
	{"check --json=maybe EX", exitUsage, "--json"},
	{"check -x EX", exitUsage, "unknown shorthand flag"},
	{"check -- -x", exitFile, "-x: cannot be read"},
	{"check EX BAD NO", exitFile, "this is no TOML"},
	{"check EX EX", exitDone, "PASS"},
	{"advise BAD EX", exitFile, "this is no TOML"},
	{"advise - -", exitUsage, "can be read once"},
	{"drill EX EX", exitUsage, "is too many"},
	{"drill --height -3 EX", exitUsage, "--height"},
	{"drill --height 12kg EX", exitUsage, "--height"},
	{"drill --height 0 EX", exitUsage, "--height"},
	{"cut", exitUsage, "cut needs a PIECE"},
	{"cut sling", exitUsage, "accepted is hitch, foot-loop, tether, bridge"},
	{"cut tether", exitUsage, "needs --finished"},
	{"cut --spool 50m", exitUsage, "--spool needs the lengths to cut from it"},
	{"cut --spool 50m 4x", exitUsage, `"4x" cannot be; accepted is COUNTxLENGTH`},
	{"cut tether --finished -5", exitUsage, "a laid length is above 0"},
	{"cut tether --finished NaN", exitUsage, `"nan" is no unit`},
	{"cut tether --finished 1e3", exitUsage, `"e" is no unit`},
	{"cut tether --cord 8 --finished 1,300", exitDone, "tether of 1300 mm"},
	{"cut tether --finished 130kg", exitUsage, "this is a mass"},
	{"cut tether --finished 130 --cord 8 --strands 3", exitDone, "3 x 130 mm"},
	{"cut tether --finished 130 --cord 8 --strands 1e1", exitUsage, "strands"},
	{"cut tether --finished 130 --cord 800", exitUsage, "--cord"},
	{"cut tether --finished 130 --cord 8 --knot granny", exitUsage, "--knot"},
	{"card", exitUsage, "card needs a FILE"},
	{"card --format doc EX", exitUsage, "accepted is text, svg, html or pdf"},
	{"card --paper a3 EX", exitUsage, "accepted is a4 or letter"},
	{"card --class 2026-02-30", exitUsage, "accepted is a day"},
	{"card --class _", exitUsage, "card needs a FILE"},
	{"card --class today EX", exitUsage, "it takes no FILE"},
	{"card -o SPACE/x.png EX", exitUsage, "-o ends in .png"},
	{"drill --height 12 EX", exitUsage, "12 mm is below 1000 mm"},
	{"card -o SPACE EX", exitFile, "cannot write the sheet to"},
	{"card -o SPACE/none/x EX", exitFile, "none/x: "},
	{"card -o EX EX", exitUsage, "is the session itself"},
	{"card BAD", exitFile, "this is no TOML"},
	{"list --dir NO", exitFile, "no folder of sessions"},
	{"list --dir BAD", exitFile, "is a file"},
	{"list klimber:x", exitUsage, "did you mean climber:"},
	{"list verdict:passed", exitUsage, "did you mean verdict:pass?"},
	{"export is:open", exitUsage, "accepted are finished, unfinished"},
	{"list \"", exitDone, ""},
	{"list date:9999..0000", exitDone, "no session"},
	{"show 8ZZZ", exitFile, "there is no such file"},
	{"show ESC", exitFile, `\x1b`},
	{"show 01ARZ3NDEKTSV4RRFFQ69G5FAV", exitFile, "there is no such file"},
	{"compare EX", exitUsage, "needs two sessions"},
	{"compare EX _", exitUsage, "got an empty word"},
	{"compare NO BAD", exitFile, "this is no TOML"},
	{"compare EX EX", exitDone, "A: "},
	{"history nobody", exitFile, "no session of a climber"},
	{"export --format xml", exitUsage, "accepted is csv or json"},
	{"export --anonymous", exitDone, "session,follows,"},
	{"forget", exitUsage, "needs a CLIMBER"},
	{"forget _", exitUsage, "got an empty word"},
	{"forget --yes *", exitFile, "nothing was removed"},
	{"forget --yes ../..", exitFile, "nothing was removed"},
	{"explain _", exitUsage, "nothing is called"},
	{"explain ESC[2J", exitUsage, `\x1b[2J`},
	{"explain %s%n%d", exitUsage, `"%s%n%d"`},
	{"explain " + strings.Repeat("x", 100_000), exitUsage, "nothing is called"},
	{"demo _", exitUsage, "got an empty word"},
	{"demo BAD", exitFile, "not a directory"},
	{"demo a b", exitUsage, "is too many"},
	{"version x", exitUsage, "takes no words"},
	{"completion nonsense", exitUsage, `"nonsense" is not a shell that completions are made for`},
	{"help nonsense", exitUsage, `"nonsense" is not a command`},
	{"_", exitUsage, `"" is not a command`},
	{"--nonsense", exitUsage, "unknown flag"},
	{"ESC[2J", exitUsage, "is not a command"},
}

func TestOddCallsAreToldWhatIsOff(t *testing.T) {
	const example = "../../testdata/sessions/examples/1-good-kit.toml"
	before, err := os.ReadFile(example)
	if err != nil {
		t.Fatal(err)
	}
	for _, o := range oddCalls {
		t.Run(o.args[:min(len(o.args), 60)], func(t *testing.T) {
			space := t.TempDir()
			bad := filepath.Join(space, "bad")
			if err := os.WriteFile(bad, []byte("this is no session\n"), 0o600); err != nil {
				t.Fatal(err)
			}
			words := strings.NewReplacer("EX", example, "BAD", bad, "NO", filepath.Join(space, "no"), "SPACE", space, "ESC", "\x1b", "NL", "\n")
			args := strings.Split(words.Replace(o.args), " ")
			for i := range args {
				if args[i] == "_" {
					args[i] = ""
				}
			}
			var out, complaints bytes.Buffer
			code := run(args, testWorld(&out, &complaints, filepath.Join(space, "sessions")))
			if code != o.exit {
				t.Errorf("exit %d, want %d: %.300s", code, o.exit, &complaints)
			}
			said := complaints.String()
			if o.exit == exitDone {
				said = out.String()
			}
			if !strings.Contains(said, o.says) {
				t.Errorf("says %.500q\nwant %q", said, o.says)
			}
			if o.exit == exitUsage && out.Len() > 0 {
				t.Errorf("a call that is off answers %.300q", &out)
			}
			if strings.Contains(out.String()+complaints.String(), "\x1b") {
				t.Error("sends a command to the terminal")
			}
			for line := range strings.Lines(complaints.String()) {
				if !strings.HasPrefix(line, "hangtape: ") {
					t.Errorf("a line that is not the program's: %.200q", line)
				}
			}
			if after, err := os.ReadFile(bad); err != nil || string(after) != "this is no session\n" {
				t.Errorf("the file that is none: %q, %v", after, err)
			}
		})
	}
	if after, err := os.ReadFile(example); err != nil || !bytes.Equal(before, after) {
		t.Errorf("a call changed the session: %v", err)
	}
}

// TestEveryCommandIsQuietOnAClosedPipe runs each command with a reader that has
// gone away: nothing is complained of, and the exit code is what it would have been.
func TestEveryCommandIsQuietOnAClosedPipe(t *testing.T) {
	dir := t.TempDir()
	if code, stderr := call(&bytes.Buffer{}, "demo", filepath.Join(dir, "sessions")); code != exitDone {
		t.Fatal(stderr)
	}
	a, b := filepath.Join(dir, "sessions", "a-good-kit.toml"), filepath.Join(dir, "sessions", "b-short-bridge.toml")
	for _, args := range [][]string{
		{"check", a, b}, {"check", "--json", b}, {"advise", b}, {"advise", "--json", a}, {"cut", "tether", "--finished", "180", "--cord", "8"},
		{"drill", a}, {"show", a}, {"compare", a, b}, {"list"}, {"list", "--json"}, {"list", "--cords"}, {"history"}, {"history", "demo climber A"}, {"export"},
		{"export", "--format", "json"}, {"card", a}, {"card", "--format", "pdf", a}, {"card", "--format", "svg", a}, {"card", "--class", "2026-04-18"},
		{"explain"}, {"explain", "slip-drop"}, {"version"}, {"--help"}, {"check", "--help"}, {"--plain"},
	} {
		var good, complaints bytes.Buffer
		want := run(args, testWorld(&good, &complaints, filepath.Join(dir, "sessions")))
		if good.Len() == 0 || complaints.Len() > 0 {
			t.Errorf("%v answers %q, %q", args, &good, &complaints)
		}
		out := &brokenWriter{err: syscall.EPIPE}
		if code := run(args, testWorld(out, &complaints, filepath.Join(dir, "sessions"))); code != want || complaints.Len() > 0 || out.writes != 1 {
			t.Errorf("%v: exit %d, want %d; %q; %d writes", args, code, want, &complaints, out.writes)
		}
	}
}
