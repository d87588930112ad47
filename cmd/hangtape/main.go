// Command hangtape walks an instructor through a fitting session at the base
// of the tree, and judges, keeps and reviews fittings.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"strings"
	"syscall"
	"time"

	"github.com/adrg/xdg"
	"github.com/mattn/go-isatty"
	"github.com/spf13/cobra"
	"golang.org/x/term"
)

// The exit codes. Scripts read them.
const (
	exitDone  = 0 // done; check: no must is short of pass
	exitFails = 1 // check: a must fails; advise: no set can pass
	exitUsage = 2 // the call's words are off
	exitShort = 3 // no must fails, but one is tight or unknown
	exitFile  = 4 // a file cannot be read or written, or what it says cannot be
	exitFault = 5 // a fault of the program's own
)

func main() {
	cobra.MousetrapHelpText = ""       // a double click opens the wizard
	cobra.EnableCommandSorting = false // help lists them in our order
	signal.Ignore(syscall.SIGPIPE)     // output knows what a closed pipe means
	columns, _, _ := term.GetSize(int(os.Stdout.Fd()))
	os.Exit(run(os.Args[1:], &world{
		in:       os.Stdin,
		out:      &output{w: os.Stdout},
		err:      os.Stderr,
		terminal: isatty.IsTerminal(os.Stdin.Fd()) && isatty.IsTerminal(os.Stdout.Fd()),
		columns:  columns,
		now:      time.Now,
		env:      os.Getenv,
		dataHome: xdg.DataHome,
	}))
}

// run is the whole program but for the process: it returns the exit code.
func run(args []string, w *world) int {
	err := contain(func() error {
		root := rootCommand(w)
		root.SetArgs(args)
		return root.Execute()
	})
	if err == nil {
		err = w.out.failure()
	}
	if err == nil {
		return exitDone
	}
	e := exit{code: exitUsage, err: err} // cobra's own errors are about the words of the call
	errors.As(err, &e)
	if e.err != nil {
		complain(w.err, e.err)
	}
	return e.code
}

// complain writes err with the program's name before every line.
func complain(w io.Writer, err error) {
	for line := range strings.Lines(strings.TrimSpace(err.Error())) {
		fmt.Fprintf(w, "hangtape: %s\n", printable(strings.TrimRight(line, "\n")))
	}
}
