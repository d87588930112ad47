package sessionstest

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"os"
	"strings"
	"unicode/utf16"
)

// Ways is in how many different ways Damage damages a file.
var Ways = len(ways)

// Damage makes the session file at path something that is no session, in one of
// Ways ways; n beyond them damages in the same ways at other places.
func Damage(path string, n int) error {
	data, err := os.ReadFile(path)
	if err != nil {
		return fmt.Errorf("not damaged: %w", err)
	}
	if damaged := ways[n%len(ways)](data, n/len(ways)); damaged != nil {
		err = os.WriteFile(path, damaged, 0o600)
	} else if err = os.Remove(path); err == nil {
		err = os.Mkdir(path, 0o700)
	}
	if err != nil {
		return fmt.Errorf("not damaged: %w", err)
	}
	return nil
}

// ways damage data; nil becomes a folder.
var ways = []func(data []byte, n int) []byte{
	func(d []byte, n int) []byte { return cut(d, "hip_mm = [", 2+n%10) },
	func([]byte, int) []byte { return []byte{} },
	func([]byte, int) []byte { return nil },
	func(d []byte, _ int) []byte { return put(d, "format = 1", "format = 9") },
	func(d []byte, _ int) []byte { return put(d, "format = 1", "format = \"1\"") },
	func(d []byte, _ int) []byte { return put(d, "hip_mm", "hip_m") },
	func(d []byte, _ int) []byte { return put(d, "mass_kg = ", "mass_kg = -") },
	func(d []byte, _ int) []byte { return put(d, "nose_mm = [", "nose_mm = [nan, ") },
	func(d []byte, _ int) []byte { return put(d, "[kit.tether]", "[kit.tether]\n[kit.tether]") },
	func(d []byte, _ int) []byte { return put(d, "purpose = \"", "purpose = \"x") },
	func(d []byte, _ int) []byte { return put(d, "id = \"", "id = \"../../etc/passwd") },
	func(d []byte, _ int) []byte { return put(d, "id = ", "idd = ") },
	func(d []byte, n int) []byte { return put(d, "place", strings.Repeat("[", 5000+n)) },
	func(d []byte, n int) []byte { return put(d, "old", "\xFF\xFE"[:1+n%2]) },
	func(d []byte, n int) []byte { d[len(d)/2+n] = 0; return d },
	func(d []byte, _ int) []byte { return append(bytes.Repeat([]byte("# filler\n"), 40_000), d...) },
	func(d []byte, _ int) []byte { return utf16Of(d) },
	func(d []byte, _ int) []byte { return []byte("<html>the sync client asks you to log in</html>\n") },
	func(d []byte, _ int) []byte { return put(d, "wraps = 6", "wraps = 6.5") },
	func(d []byte, _ int) []byte { return put(d, "started = ", "started = 2024-02-30T25:00:00Z #") },
	func(d []byte, _ int) []byte { return put(d, "climber = \"", "climber = \"\\u001b[2J\\x") },
	func(d []byte, n int) []byte { return append(d, d[:len(d)-n]...) },
	func(d []byte, _ int) []byte { return append([]byte("<<<<<<< mine\n"), d...) },
}

// cut is data up to so many bytes behind a text.
func cut(data []byte, behind string, n int) []byte {
	return data[:bytes.Index(data, []byte(behind))+n]
}

// put is data with a text in place of the first of another; the bytes of data
// without one are damaged at their end.
func put(data []byte, old, new string) []byte {
	if !bytes.Contains(data, []byte(old)) {
		return append(data, "= damaged"...)
	}
	return bytes.Replace(data, []byte(old), []byte(new), 1)
}

func utf16Of(data []byte) []byte {
	out := []byte{0xFF, 0xFE}
	for _, u := range utf16.Encode([]rune(string(data))) {
		out = binary.LittleEndian.AppendUint16(out, u)
	}
	return out
}
