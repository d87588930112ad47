package sessions

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// What a file may be beside a session, and what the answer has to say.
func TestFilesThatAreNoSession(t *testing.T) {
	text := full(t)
	replace := func(old, new string) string {
		if !strings.Contains(text, old) {
			t.Fatalf("no %q in the full file", old)
		}
		return strings.Replace(text, old, new, 1)
	}
	for name, c := range map[string]struct{ text, want string }{
		"empty":           {"\n", "f.toml: session.id is missing"},
		"only the format": {"format = 1\n", "tape.class is missing"},
		"newer format":    {"format = 2\nnovelty = true\n", "f.toml:1: format is 2; accepted is 1 (written by a newer hangtape"},

		"duplicate key":       {replace("hook = true", "hook = true\ndivision_mm = 2"), "tape.division_mm is there twice, on line 21 and on line 23"},
		"duplicate table":     {text + "\n[tape]\n", "tape is there twice, on line 19 and on line"},
		"key in dots":         {replace("[tape]", "tape.hook = false\n[tape]"), "f.toml"},
		"metres":              {replace("hip_mm =", "hip_m ="), "hangs.1.hip_m is not a key of the file (did you mean hangs.1.hip_mm?)"},
		"centimetres":         {replace("hip_mm =", "hip_cm ="), "did you mean hangs.1.hip_mm?"},
		"capital":             {replace("hip_mm =", "Hip_mm ="), "did you mean hangs.1.hip_mm?"},
		"hyphen":              {replace("hip_mm =", "hip-mm ="), "did you mean hangs.1.hip_mm?"},
		"no unit":             {replace("left_hitch_top_mm =", "left_hitch_top ="), "did you mean hangs.1.left_hitch_top_mm?"},
		"both spellings":      {replace("hip_mm =", "HIP_MM = [1]\nhip_mm ="), "hangs.1.HIP_MM is not a key"},
		"key of another":      {replace("[climber]", "[climber]\nhip_mm = [1]"), "did you mean hangs.1.hip_mm?"},
		"table spelt":         {replace("[kit.hitch_left]", "[kit.hitch-left]"), "kit.hitch-left is not a key of the file (did you mean kit.hitch_left?)"},
		"table capital":       {replace("[tape]", "[Tape]"), "Tape is not a key of the file (did you mean tape?)"},
		"strange table":       {replace("[climber]", "[height]\nx = 1\n[climber]"), "height is not a key of the file"},
		"table in a piece":    {replace("[kit.tether]", "[kit.garda.sling]\n[kit.tether]"), "kit.garda.sling is not a key of the file"},
		"empty strange table": {text + "\n[strange]\n", "strange is not a key of the file"},
		"hang as one table":   {replace("[[hangs]]", "[hangs]"), "hangs is a table; accepted is tables [[hangs]], one for each"},
		"tape as many":        {replace("[tape]", "[[tape]]"), "accepted is a table [tape] (one pair of brackets"},
		"table as a number":   {"format = 1\nclimber = 5\n", "f.toml:2: climber is the number 5; accepted is a table [climber]"},
		"kit as a number":     {"format = 1\nkit = 5\n", "kit is the number 5"},
		"100 hangs":           {replace("[[hangs]]", strings.Repeat("[[hangs]]\n", 100)+"[[hangs]]"), "hangs is there 101 times; accepted is at most 99"},
		"kept twice":          {text + "\n[[kept]]\nkey = \"climber.thigh_mm\"\n", `as is that of kept.1`},

		"UTF-16":         {"\xFF\xFEf\x00o\x00", "the file is UTF-16 text (byte 0)"},
		"Latin-1":        {replace("old beech", "h\xEAtre"), "is 0xEA, which is no UTF-8"},
		"0xFF":           {"format = 1\n\xFF", "f.toml:2: byte 11 is 0xFF"},
		"NUL":            {"format = 1\n\x00", "f.toml:2: byte 11 is NUL"},
		"lone CR":        {"format = 1\rx = 2\n", "no TOML"},
		"half":           {text[:strings.Index(text, "1214,")], "no TOML"},
		"no TOML":        {"PK\x03\x04", "no TOML"},
		"too large":      {strings.Repeat("#\n", 1<<17+1), "larger than 256 kB"},
		"long line":      {"format = 1\n# " + strings.Repeat("x", 1<<15), "f.toml:2: the line has"},
		"nested lists":   {"x = " + strings.Repeat("[", 10000), "nests more than 8 deep"},
		"nested tables":  {"x = " + strings.Repeat("{a=", 5000), "nests more than 8 deep"},
		"dotted key":     {strings.Repeat("a.", 8000) + "a = 1", "too many parts"},
		"dotted header":  {"[" + strings.Repeat("a.", 8000) + "a]", "too many parts"},
		"dotted inside":  {"x = {" + strings.Repeat("a . ", 4000) + "a = 1}", "too many parts"},
		"quoted dots":    {"x = {" + strings.Repeat(`"a".`, 3000) + "a = 1}", "too many parts"},
		"many tables":    {"x = [\n" + strings.Repeat("{},", 501) + "]", "too many tables in braces"},
		"many keys":      {strings.Repeat("x = 1\n", 9000), "more keys than any session"},
		"10 kB of name":  {replace(`"old beech by the barn"`, `"`+strings.Repeat("x", 10000)+`"`), "a text of 10000 bytes"},
		"huge number":    {replace("mass_kg = 84", "mass_kg = 99999999999999999999"), "out of range"},
		"huge float":     {replace("mass_kg = 84", "mass_kg = 1e400"), "out of range"},
		"impossible day": {replace("inspected = 2026-04-18", "inspected = 2026-02-30"), "no TOML"},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := Decode("f.toml", []byte(c.text))
			var file *FileError
			if !errors.As(err, &file) || !strings.Contains(err.Error(), c.want) {
				t.Errorf("got %.600v\nwant %s", err, c.want)
			}
		})
	}
}

func TestFilesThatAreSessionsAllTheSame(t *testing.T) {
	text := full(t)
	for name, text := range map[string]string{
		"byte order mark":       "\xEF\xBB\xBF" + text,
		"CRLF":                  strings.ReplaceAll(text, "\n", "\r\n"),
		"tabs":                  strings.ReplaceAll(text, " = ", "\t=\t"),
		"hangs in braces":       strings.Replace(text[:strings.Index(text, "[[hangs]]")], "format = 1", "format = 1\nhangs = [ { hip_mm = [1220] } ]", 1),
		"steps as tables":       strings.Replace(text, between2(text, "steps = [\n", "]\n"), "", 1) + "\n[[drill.steps]]\nname = \"ease-left\"\n",
		"a list over lines":     strings.Replace(text, "[1220, 1214, 1217]", "[\n 1220, # first\n 1214,\n 1217,\n]", 1),
		"dots in a text":        strings.Replace(text, `"wind"`, `"`+strings.Repeat("...", 200)+`"`, 1),
		"a text over lines":     strings.Replace(text, `"wind"`, "\"\"\"a\n[tape]\nhook = 1\n\"\"\"", 1),
		"99 decimals in a list": strings.Replace(text, "[1220, 1214, 1217]", "["+strings.Repeat("1220.5, ", 99)+"]", 1),
	} {
		if _, err := Decode("f.toml", []byte(text)); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestUntoldHookCountsAsOne(t *testing.T) {
	s, err := Decode("f.toml", []byte(set(t, full(t), "tape", "hook", "")))
	if err != nil || !s.Fit.Tape.Hook {
		t.Errorf("got hook %v, %v; want the larger uncertainty", s.Fit.Tape.Hook, err)
	}
}

func TestAllFaultsAreToldAtOnce(t *testing.T) {
	text := full(t)
	text = set(t, text, "climber", "mass_kg", "-84")
	text = set(t, text, "hangs", "hip_mm", "[nan, inf]")
	text = set(t, text, "session", "unit", `"furlong"`)
	text = strings.Replace(text, "waist_mm", "waste_mm", 1)
	_, err := Decode("f.toml", []byte(text))
	var file *FileError
	if !errors.As(err, &file) || len(file.Faults) != 5 {
		t.Fatalf("got %v, want five faults", err)
	}
	last := 0
	for _, f := range file.Faults {
		if f.Line <= 0 || f.Line < last {
			t.Errorf("line %d after line %d in\n%v", f.Line, last, err)
		}
		last = f.Line
	}
}

// Refused at once and whatever the size: a test that hangs here fails by the
// time limit of the whole run.
func TestPathsThatAreNoFiles(t *testing.T) {
	dir := t.TempDir()
	link := filepath.Join(dir, "link")
	if err := os.Symlink(filepath.Join(dir, "nowhere"), link); err != nil {
		t.Skip("no symbolic links here")
	}
	big := filepath.Join(dir, "big.toml")
	if err := os.WriteFile(big, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Truncate(big, 2<<30); err != nil {
		t.Fatal(err)
	}
	paths := map[string]string{
		dir:                         "is a folder",
		link:                        "there is no such file",
		filepath.Join(dir, "a", ""): "there is no such file",
		big:                         "256 kB",
		"bad\x00name":               "cannot be read",
	}
	if _, err := os.Stat("/dev/zero"); err == nil {
		paths["/dev/zero"] = "is no plain file"
	}
	if fifo := filepath.Join(dir, "fifo"); makeFIFO(fifo) == nil {
		paths[fifo] = "is no plain file"
	}
	if os.Getuid() > 0 {
		secret := filepath.Join(dir, "secret.toml")
		if err := os.WriteFile(secret, []byte(full(t)), 0); err != nil {
			t.Fatal(err)
		}
		paths[secret] = "permissions do not allow it"
	}
	for path, want := range paths {
		var file *FileError
		if _, err := ReadFile(path, nil); !errors.As(err, &file) || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: got %v, want %q", path, err, want)
		}
	}
}

func TestStandardInput(t *testing.T) {
	if f, err := ReadFile("-", strings.NewReader(full(t))); err != nil || f.Session.Climber != "demo climber A" {
		t.Errorf("got %+v, %v", f, err)
	}
	for in, want := range map[string]string{"": "-: is empty", strings.Repeat("#\n", 1<<18): "more than 256 kB"} {
		if _, err := ReadFile("-", strings.NewReader(in)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%d bytes: got %v, want %q", len(in), err, want)
		}
	}
}

// What a sync client or an editor leaves in place of a session is told as that.
func TestFilesThatAreNoTextOfTheirOwnAreNamed(t *testing.T) {
	for text, want := range map[string]string{
		"<html>log in</html>\n": "web page",
		"format = 1\n<<<<<<< mine\n[session]\n=======\n>>>>>>> theirs\n": "two versions were merged",
		"format = 1\n[tape": "cut off",
	} {
		if _, err := Decode("x.toml", []byte(text)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
}
