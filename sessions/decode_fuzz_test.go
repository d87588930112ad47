package sessions

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
)

// Whatever the bytes are, the answer is a session that is written and read
// again without a change, or faults whose lines are in the file.
func FuzzDecode(f *testing.F) {
	f.Add([]byte(full(f)))
	files, err := filepath.Glob("../testdata/sessions/*/*.toml")
	if err != nil || len(files) == 0 {
		f.Fatal("no seeds", err)
	}
	for _, name := range files {
		data, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	for _, text := range []string{
		"", "format = 1", "format = 2", "\xEF\xBB\xBFformat = 1", "[session", "a = \"\"\"\n", "a = '''", "x = [{a=1},\n{b=\"]\"}]",
		"[[hangs]]\n[hangs.a]\n[[hangs]]\nhip_mm=[nan]", "\"a\\\"]\" = 1", "format = 1\r\n[tape]\r\nclass='ii'\r\ndivision_mm=+1.0\r\n",
		"format = 1\nsession.id = \"01KPFXRYR03M4T5W6X7Y8Z9A0B\"\nsession.started = 2199-12-31T23:59:59-12:00\ntape = {class = \"I\", division_mm = 1}",
	} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		s, err := Decode("f.toml", data)
		if err != nil {
			var file *FileError
			if !errors.As(err, &file) || len(file.Faults) == 0 {
				t.Fatalf("error without faults: %v", err)
			}
			for _, fault := range file.Faults {
				if fault.Line < 0 || fault.Line > 1+bytes.Count(data, []byte("\n")) || fault.Found == "" {
					t.Fatalf("fault %+v", fault)
				}
			}
			return
		}
		written := Encode(s)
		again, err := Decode("written", written)
		if err != nil {
			t.Fatalf("cannot read what was written: %v\n%s", err, written)
		}
		if second := Encode(again); !bytes.Equal(second, written) || !reflect.DeepEqual(again, s) {
			t.Fatalf("written as\n%s\nand then as\n%s", written, second)
		}
		if strings.Contains(string(written), "NaN") || strings.Contains(string(written), "Inf") {
			t.Fatalf("no number got in:\n%s", written)
		}
	})
}
