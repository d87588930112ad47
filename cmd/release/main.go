// Command release builds everything that is handed out, into one folder:
//
//	go run ./cmd/release --version 1.0.0 dist
//
// One static binary for each platform, an archive of shell completions, manual
// pages and licences for all, and SHA256SUMS over them. The same commit and compiler
// give the same bytes in any folder.
package main

import (
	"os"

	"github.com/spf13/cobra"
)

func main() {
	var version, only, translation string
	c := &cobra.Command{
		Use:          "release --version X.Y.Z DIR",
		Short:        "Build all that is handed out into a folder",
		Args:         cobra.ExactArgs(1),
		SilenceUsage: true,
		RunE:         func(_ *cobra.Command, args []string) error { return release(version, args[0], only, translation) },
	}
	c.Flags().StringVar(&version, "version", "", "that the binaries tell, as `X.Y.Z`")
	c.Flags().StringVar(&only, "only", "", "build for this `platform` alone, as linux/amd64")
	c.Flags().StringVar(&translation, "words", "", "build with the translation in this `file`")
	if c.Execute() != nil {
		os.Exit(1)
	}
}
