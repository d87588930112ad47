package rules

// DefaultLimits are the limits where no school has moved one.
func DefaultLimits() Limits { return Limits{} }

// With is l with what a school has moved.
func (l Limits) With(moved map[Limit]float64) Limits {
	for k, v := range moved {
		l[k] = v
	}
	return l
}
