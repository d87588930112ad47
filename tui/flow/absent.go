package flow

import (
	"fmt"
	"reflect"
	"strings"
)

// absent says that the kit does not have a part, present, after all. What is told
// of it in its table, key, would bring it back with the file, and so is taken out:
// at the second time of asking, as the first one only says what that is.
func absent(key string, asks []Ask, present func(*Draft) *bool) func(*State) {
	var own []Ask
	for _, a := range asks {
		if a.cell != nil && strings.HasPrefix(a.Key, key+".") {
			own = append(own, a)
		}
	}
	return func(s *State) {
		d := s.Draft.clone()
		var told []string
		for _, a := range own {
			if a.Told(&d) > 0 {
				told = append(told, a.Title)
			}
			reflect.ValueOf(a.cell(&d)).Elem().SetZero()
			d.unkeep(a.Key)
		}
		*present(&d) = false
		if again := fmt.Sprint(key, s.Saves); len(told) > 0 && s.doubted != again {
			s.doubted = again
			s.Said = Said{Kind: Refused, Text: "not yet: what is told of it would bring it back (" + strings.Join(told, ", ") + "). Say no again and that is taken out."}
			return
		}
		if s.commit(d) {
			s.forward()
		}
	}
}
