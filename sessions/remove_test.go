package sessions

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"testing"
)

func always([]byte) bool { return true }

func TestRemoveLeavesNothing(t *testing.T) {
	st := newStore(t)
	path, _ := saved(t, st, nil)
	if err := os.WriteFile(filepath.Join(st.Dir(), "."+filepath.Base(path)+".1.tmp"), []byte("half"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := st.Remove(path, always); err != nil {
		t.Fatal(err)
	}
	err := filepath.WalkDir(st.Dir(), func(name string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() {
			t.Errorf("%s is left", name)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
}

func TestRemoveRespectsEditorsAndChanges(t *testing.T) {
	st := newStore(t)
	path, _ := saved(t, st, nil)
	ed, s, err := st.Edit(path)
	if err != nil {
		t.Fatal(err)
	}
	var locked *LockedError
	if err := st.Remove(path, always); !errors.As(err, &locked) {
		t.Errorf("under an editor: %v", err)
	}
	if err := ed.Save(s); err != nil {
		t.Errorf("the editor's file is gone: %v", err)
	}
	ed.Close()
	var changed *ChangedError
	if err := st.Remove(path, func([]byte) bool { return false }); !errors.As(err, &changed) {
		t.Errorf("of another's: %v", err)
	}
	if _, err := st.Load(path); err != nil {
		t.Errorf("it is gone: %v", err)
	}
}

func TestRemoveTakesTheTargetOfALink(t *testing.T) {
	st := newStore(t)
	path, _ := saved(t, st, nil)
	target := filepath.Join(t.TempDir(), "elsewhere.toml")
	if err := os.Rename(path, target); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(target, path); err != nil {
		t.Skip("no symbolic links here")
	}
	if err := st.Remove(path, always); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{path, target} {
		if _, err := os.Lstat(name); !errors.Is(err, fs.ErrNotExist) {
			t.Errorf("%s: %v", name, err)
		}
	}
}
