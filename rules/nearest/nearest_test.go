package nearest

import (
	"strings"
	"testing"
)

func TestOf(t *testing.T) {
	names := []string{"garda-under-connector", "garda-release-room", "hip", "nose"}
	for name, want := range map[string]string{
		"garda-under-conector":    "garda-under-connector",
		"GARDA_RELEASE_ROOM":      "garda-release-room",
		"garda release room":      "garda-release-room",
		"hips":                    "hip",
		"zebra":                   "",
		"hipab":                   "hip", // two mistakes
		"hipabc":                  "",    // three are too many of a short name
		"abhip":                   "hip", // in front as well
		"abchip":                  "",
		"garda-release-rxxxxxx":   "garda-release-room",
		strings.Repeat("hip", 99): "",
	} {
		if got := Of(name, names); got != want {
			t.Errorf("Of(%q) = %q, want %q", name, got, want)
		}
	}
}

// A name of a hundred letters is still compared, a longer one is not.
func TestLongNames(t *testing.T) {
	long := strings.Repeat("x", 99)
	for name, want := range map[string]string{long + "y": long + "z", long + "yy": ""} {
		if got := Of(name, []string{long + "z"}); got != want {
			t.Errorf("Of(%d letters) = %q, want %q", len(name), got, want)
		}
	}
}

// Of several that are as near the first is meant.
func TestFirstOfTheNearest(t *testing.T) {
	if got := Of("hop", []string{"nose", "hip", "hup"}); got != "hip" {
		t.Errorf("got %q", got)
	}
}
