package main

import (
	"fmt"
	"runtime"
	"runtime/debug"
	"strings"

	"github.com/spf13/cobra"
)

// version is set by a release build: -ldflags "-X main.version=1.2.3".
var version string

// wordsOf is set by a build in another language: the file that its words are of.
var wordsOf string

func versionCommand(w *world) *cobra.Command {
	return &cobra.Command{
		Use:   "version",
		Short: "Version and build",
		Args:  words(0, 0, ""),
		RunE: func(*cobra.Command, []string) error {
			info, _ := debug.ReadBuildInfo()
			_, err := fmt.Fprintln(w.out, versionLine(version, wordsOf, info))
			return err
		},
	}
}

// versionLine is the version with what is known of the build: the commit and
// its time where the build had them, the words, the compiler, the platform.
func versionLine(version, wordsOf string, info *debug.BuildInfo) string {
	parts := []string{}
	if info != nil {
		if version == "" {
			version = info.Main.Version
		}
		set := map[string]string{}
		for _, s := range info.Settings {
			set[s.Key] = s.Value
		}
		if r := set["vcs.revision"]; r != "" {
			commit := "commit " + r[:min(12, len(r))]
			if set["vcs.modified"] == "true" {
				commit += " with changes"
			}
			parts = append(parts, commit, set["vcs.time"])
		}
	}
	if version == "" {
		version = "(devel)"
	}
	if wordsOf != "" {
		parts = append(parts, wordsOf)
	}
	parts = append(parts, runtime.Version(), runtime.GOOS+"/"+runtime.GOARCH)
	return "hangtape " + version + " (" + strings.Join(parts, ", ") + ")"
}
