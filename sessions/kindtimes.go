package sessions

import "time"

// moment is a time with its zone; it becomes UTC.
func moment[T any](key string, at func(*T, int) *time.Time) field[T] {
	return date(key, at, TimeKind, "", time.RFC3339Nano)
}

// day is a date without a time; it becomes its midnight in UTC.
func day[T any](key string, at func(*T, int) *time.Time) field[T] {
	return date(key, at, DayKind, localDate, time.DateOnly)
}

// localDate and the like name the zones that the TOML library gives times
// without a zone.
const localDate, localTime, localDateTime = "date-local", "time-local", "datetime-local"

func date[T any](key string, at func(*T, int) *time.Time, kind Kind, zone, layout string) field[T] {
	return field[T]{key: key, about: KeyInfo{Kind: kind},
		take: func(t *T, i int, v any) []wrong {
			when, ok := v.(time.Time)
			if !ok {
				return []wrong{{found: inWords(v)}}
			}
			is := when.Location().String()
			local := is == localDate || is == localTime || is == localDateTime
			if local != (zone != "") || local && is != zone {
				return []wrong{{found: inWords(v)}}
			}
			if local {
				when = time.Date(when.Year(), when.Month(), when.Day(), 0, 0, 0, 0, time.UTC)
			}
			when = when.UTC()
			if y := when.Year(); y < 1900 || y > 2199 {
				return []wrong{{found: show(v), accepted: "a year from 1900 to 2199"}}
			}
			*at(t, i) = when
			return nil
		},
		put: func(t *T, i int) string {
			if at(t, i).IsZero() {
				return ""
			}
			return at(t, i).UTC().Format(layout)
		}}
}
