package fit

// CordStrength is the least breaking strength in kN of a single strand of
// accessory cord of diameter d mm: 0.2·d² (EN 564, second hand). It is known from
// 4 to 8 mm, the cords of that standard, and nowhere else.
func CordStrength(d float64) Number {
	if d >= 4 && d <= 8 {
		return Some(0.2 * d * d)
	}
	return Number{}
}
