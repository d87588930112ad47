package sessions

import (
	"bytes"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"time"

	"example.com/hangtape/fit"
)

var tiedDay = time.Date(2026, 4, 18, 0, 0, 0, 0, time.UTC)

// tiedPieces is one piece of every use. The data are invented.
func tiedPieces() []TiedPiece {
	var all []TiedPiece
	for u := range fit.NumCordUses {
		c := fit.StandardCord(u)
		c.Tail = 0 // not kept: only what came out is
		c.Finished, c.Diameter = 700, 8
		if u == fit.CordHitch {
			c.Host = 11.4
		}
		all = append(all, TiedPiece{On: tiedDay, TiedCord: fit.TiedCord{Cord: c, Cut: 3000, Tails: 260.5}})
	}
	return all
}

func pieceStore(t *testing.T) *Store {
	st, err := OpenStore(filepath.Join(t.TempDir(), "s"), func() time.Time { return tiedDay }, bytes.NewReader(make([]byte, 100)))
	if err != nil {
		t.Fatal(err)
	}
	return st
}

func TestPiecesAreKeptInOrder(t *testing.T) {
	st := pieceStore(t)
	if all, err := st.Pieces(); err != nil || len(all) != 0 {
		t.Fatalf("a new folder: %v, %v", all, err)
	}
	want := tiedPieces()
	for _, p := range want {
		if err := st.AddPiece(p); err != nil {
			t.Fatal(err)
		}
	}
	if got, err := st.Pieces(); err != nil || !reflect.DeepEqual(got, want) {
		t.Errorf("got %+v, %v\nwant %+v", got, err, want)
	}
	if list, err := listed(st); err != nil || len(list) != 0 {
		t.Errorf("the pieces are listed among the sessions: %v, %v", list, err)
	}
}

func TestAPieceThatCannotBeIsNotKept(t *testing.T) {
	st := pieceStore(t)
	good := tiedPieces()[2]
	if err := st.AddPiece(good); err != nil {
		t.Fatal(err)
	}
	before, _ := os.ReadFile(st.PiecesPath())
	bad := good
	bad.Cut = 800
	if err := st.AddPiece(bad); err == nil || !strings.Contains(err.Error(), "pieces.2.cut_mm") {
		t.Errorf("error %v", err)
	}
	if after, _ := os.ReadFile(st.PiecesPath()); !bytes.Equal(after, before) {
		t.Errorf("the file was changed:\n%s", after)
	}
}

func TestPiecesFileIsStrict(t *testing.T) {
	good := string(EncodePieces(tiedPieces()[2:3]))
	for _, c := range []struct{ old, new, want string }{
		{"cut_mm = 3000", "cut_mm = 3000\ncolour = 1", "pieces.1.colour is not a key"},
		{"cut_mm = 3000\n", "", "pieces.1.cut_mm is missing"},
		{"cut_mm = 3000", "cut_mm = 800", "pieces.1.cut_mm is 800 mm; accepted is more than"},
		{"both_tails_mm = 260.5", "both_tails_mm = nan", "pieces.1.both_tails_mm"},
		{`piece = "tether"`, `piece = "teather"`, `did you mean "tether"?`},
		{`knot = "double-fishermans"`, `knot = "scaffold"`, "pieces.1.knot is scaffold knot; accepted is double-fishermans, triple-fishermans"},
		{"strands = 2", "strands = 2\nwraps = 6", "pieces.1.wraps"},
		{"format = 1", "format = 2", "format"},
	} {
		text := strings.Replace(good, c.old, c.new, 1)
		if text == good {
			t.Fatalf("no %q in\n%s", c.old, good)
		}
		if _, err := DecodePieces("pieces.toml", []byte(text)); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: error %v, want %q", c.new, err, c.want)
		}
	}
}

func TestAPiecesFileThatCannotBeReadIsNotReplaced(t *testing.T) {
	st := pieceStore(t)
	if err := os.WriteFile(st.PiecesPath(), []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := st.AddPiece(tiedPieces()[0]); err == nil {
		t.Error("no error")
	}
	if data, _ := os.ReadFile(st.PiecesPath()); string(data) != "mine" {
		t.Errorf("the file is now %q", data)
	}
}
