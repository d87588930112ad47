package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/number"
)

// unitFlag is the unit in which lengths are told; empty is the session's own.
type unitFlag sessions.Unit

func (u *unitFlag) String() string { return string(*u) }

// Type is what stands for the value in the help.
func (u *unitFlag) Type() string { return "mm|cm|in" }

// Set takes the word of the call.
func (u *unitFlag) Set(word string) error {
	switch sessions.Unit(word) {
	case sessions.MM, sessions.CM, sessions.Inch:
		*u = unitFlag(word)
		return nil
	}
	return fmt.Errorf("accepted is mm, cm or in")
}

// of is the unit for a session.
func (u *unitFlag) of(s *sessions.Session) string { return u.or(s.Unit) }

// or is the unit where a session reads in own.
func (u *unitFlag) or(own sessions.Unit) string {
	switch {
	case *u != "":
		return string(*u)
	case own != "":
		return string(own)
	}
	return string(sessions.MM)
}

func addUnitFlag(c *cobra.Command, u *unitFlag) {
	c.Flags().Var(u, "unit", "the unit of lengths in the text; without it the session's own")
	err := c.RegisterFlagCompletionFunc("unit", cobra.FixedCompletions(
		[]cobra.Completion{"mm", "cm", "in"}, cobra.ShellCompDirectiveNoFileComp))
	if err != nil {
		panic("unit: the flag was not added")
	}
}

// lengthTyped is a length of the call, in mm, as people typed it who read in unit;
// name is what errors call it.
func lengthTyped(name, typed, unit string, kind number.Kind, accepted number.Range) (mm float64, err error) {
	a, err := number.Parse(typed, number.Field{Name: name, Kind: kind, Unit: sessions.Unit(unit), Accepted: accepted})
	switch {
	case err != nil:
		return 0, usage("%w", err)
	case !a.Taken():
		return 0, usage("%s is empty", name)
	}
	return a.Value.V, nil
}
