// Command mutate changes every sign of fit and rules, one at a time, and tells
// which changes no test notices:
//
//	go run ./.ci/mutate >results.tsv
//
// The changes are those that gremlins makes by default
// (github.com/go-gremlins/gremlins 0.6.0): + - * / % swapped, the boundaries of
// < <= > >=, comparisons turned round, ++ and -- swapped, signs dropped. A build
// for each of them would take days; here all are compiled in, and an environment
// variable says which one is on. Constants alone are compiled anew.
//
// A line of the results: killed, lived, timed out or not viable; where; what was
// changed; the test that noticed. A run that was broken off goes on with -done.
// Generators are left out.
package main

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"regexp"
	"slices"
	"sync"
	"time"
)

func main() {
	only := flag.String("only", "", "mutants whose file:line:column matches this expression")
	done := flag.String("done", "", "results of an earlier run, whose mutants are passed over")
	quick := flag.Bool("quick", false, "leave out the slow tests: what only they would notice is told as lived")
	timeout := flag.Duration("timeout", 2*time.Minute, "how much processor time one run of the tests of one package may take")
	workers := flag.Int("workers", 2, "how many at a time")
	flag.Parse()
	b := &bench{overlay: map[string]string{}, quick: *quick, timeout: *timeout}
	if err := b.run(*only, *done, *workers); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func (b *bench) run(only, done string, workers int) (err error) {
	match, err := regexp.Compile(only)
	if err != nil {
		return err
	}
	var known []byte
	if done != "" {
		if known, err = os.ReadFile(done); err != nil {
			return err
		}
	}
	if b.dir, err = os.MkdirTemp("", "mutate"); err != nil {
		return err
	}
	defer os.RemoveAll(b.dir)
	mutants, err := b.prepare()
	if err != nil {
		return err
	}
	mutants = slices.DeleteFunc(mutants, func(m *mutant) bool {
		return !match.MatchString(m.String()) || bytes.Contains(known, fmt.Appendf(nil, "\t%s\t%s\t", m, m.kind))
	})
	slices.SortStableFunc(mutants, func(x, y *mutant) int { return len(x.now) - len(y.now) }) // constants last
	for _, p := range packages {
		if !slices.ContainsFunc(mutants, func(m *mutant) bool { return m.pkg == p || slices.Contains(also[m.pkg], p) }) {
			continue
		}
		if err := b.build(p, b.overlay, b.binary(p)); err != nil {
			return err
		}
		if by, _ := b.tests(p, b.binary(p), 0); by != "" {
			return fmt.Errorf("%s fails without a change: %s", p, by)
		}
	}
	todo := make(chan *mutant)
	var all sync.WaitGroup
	for range workers {
		all.Go(func() {
			for m := range todo {
				verdict, by := b.judge(m)
				fmt.Printf("%s\t%s\t%s\t%s\n", verdict, m, m.kind, by)
			}
		})
	}
	for _, m := range mutants {
		todo <- m
	}
	close(todo)
	all.Wait()
	return nil
}
