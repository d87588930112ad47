package main

import (
	"path/filepath"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"hangtape": main})
}

// TestScript runs the command line as people and scripts call it. A script is
// named for its command first; -update rewrites what the scripts expect.
func TestScript(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		UpdateScripts:       *update,
		Setup: func(env *testscript.Env) error {
			examples, err := filepath.Abs("../../testdata/sessions/examples")
			env.Setenv("EXAMPLES", examples)
			env.Setenv("HANGTAPE_DIR", filepath.Join(env.WorkDir, "sessions"))
			return err
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"edit":  cmdEdit,
			"exits": cmdExits,
		},
	})
}
