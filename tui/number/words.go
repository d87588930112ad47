package number

// Every word that the package says or understands is in this file.

// unitWords are the ways to write a unit, in lower case.
var unitWords = map[string]string{
	"mm": "mm", "millimetre": "mm", "millimetres": "mm", "millimeter": "mm", "millimeters": "mm",
	"cm": "cm", "centimetre": "cm", "centimetres": "cm", "centimeter": "cm", "centimeters": "cm",
	"m": "m", "metre": "m", "metres": "m", "meter": "m", "meters": "m",
	"in": "in", "inch": "in", "inches": "in", `"`: "in",
	"ft": "ft", "foot": "ft", "feet": "ft", "'": "ft",
	"kg": "kg", "kgs": "kg", "kilo": "kg", "kilos": "kg", "kilogram": "kg", "kilograms": "kg",
	"g": "g", "gram": "g", "grams": "g",
	"lb": "lb", "lbs": "lb", "pound": "lb", "pounds": "lb",
	"st": "st", "stone": "st", "stones": "st",
	"kn": "kN", "kilonewton": "kN", "kilonewtons": "kN",
	"dan": "daN", "n": "N", "newton": "N", "newtons": "N",
	"lbf": "lbf",
	"%":   "%", "percent": "%",
	"deg": "deg", "degree": "deg", "degrees": "deg", "\u00b0": "deg",
}

// kindWords say what a kind is, and what kind of quantity its dimension is.
var kindWords = [...]struct{ one, is string }{
	Height:   {"a height", "a length"},
	Laid:     {"a laid length", "a length"},
	Offset:   {"a distance", "a length"},
	Diameter: {"a width", "a length"},
	Mass:     {"a mass", "a mass"},
	Force:    {"a strength", "a force"},
	Percent:  {"a share", "a percentage"},
	Angle:    {"an angle", "an angle"},
	Count:    {"a count", "a number without a unit"},
	Ratio:    {"a ratio", "a number without a unit"},
}

// dimensionWords say what a unit measures.
var dimensionWords = [...]string{
	length: "a length", mass: "a mass", force: "a force", share: "a percentage", angle: "an angle", plain: "a plain number",
}

// accepts says what a kind takes besides its own unit.
var accepts = [...]string{
	Height:   "a length in %s, or with mm, cm, m, in or ft" + sayMinus,
	Laid:     "a length above 0 in %s, or with mm, cm, m, in or ft",
	Offset:   "a length in %s, or with mm, cm, m, in or ft" + sayMinus,
	Diameter: "a width above 0 in %s, as on the label, or with in",
	Mass:     "a mass in %s, or with lb, st or g",
	Force:    "a force in %s, or with N, daN or lbf",
	Percent:  "a percentage, as on the label, with or without %s",
	Angle:    "an angle in %s",
	Count:    "a whole number%s",
	Ratio:    "a number%s",
}

var examples = [...]string{
	Height: "1742, 174.2 cm, 68 1/2 in or 5 ft 8 1/2 in", Laid: "1080, 108 cm or 42 1/2 in", Offset: "150, -20 or 6 in",
	Diameter: "11.4 or 7/16 in", Mass: "84, 185 lb or 12 st 5", Force: "13.5 or 13500 N", Percent: "2.1",
	Angle: "8", Count: "6", Ratio: "0.6",
}

// inchExamples stand in for examples where people read in inches.
var inchExamples = map[Kind]string{
	Height: "68 1/2, 5 ft 8 1/2 in or 1742 mm", Laid: "42 1/2 or 1080 mm", Offset: "6, -3/4 or 150 mm",
}

// centimetreExamples stand in for examples where people read in centimetres.
var centimetreExamples = map[Kind]string{
	Height: "174.2, 1742 mm or 68 1/2 in", Laid: "108, 1080 mm or 42 1/2 in", Offset: "15, -2 or 6 in",
}

const (
	sayAmbiguous = "%s: %q: %s: %s?"
	sayUnlikely  = "%s: %s; usual is %s"
	sayPerhaps   = "; perhaps %s"
	sayRefused   = "%s: %q: %s"
	sayAccepted  = "; accepted is %s, for example %s"
	sayOr        = ", or "
	sayRange     = "%s to %s"
	sayWithin    = ", from %s"
	sayMinus     = "; a minus sign is allowed"

	whyOneLine    = "one value on one line"
	whyLong       = "too long for one value"
	whyText       = "it is not readable text"
	whyControl    = "it holds a control character"
	whyDigits     = "only the digits 0 to 9 are read"
	whySign       = "%q is not part of a number; give one plain value"
	whyNoNumber   = "there is no number in it"
	whyNoUnit     = "%q is no unit"
	whyUnitFirst  = "%q has no number before it"
	whyRange      = "%q looks like a range; give one value"
	whyMinus      = "a minus sign belongs in front of the whole"
	whyTwo        = "%q and %q are two numbers with nothing between them"
	whySeparators = "%q has its points or commas in odd places"
	whyEnds       = "%q begins or ends with a point or comma"
	whyManyDigits = "%q has too many digits"
	whySlash      = "a fraction is written without spaces, like 1/2"
	whyFraction   = "%s is no fraction of a tape: the upper number is at least 1 and below the lower one"
	whyFractionBy = "%s cannot be divided by 0"
	whyFine       = "%s is finer than any tape: 64 is the most below the line"
	whySplit      = "%s could be %s or %s %s; put a space before the fraction"
	whyBeforeFrac = "%q has decimals and a fraction"
	whyCompound   = "%s does not go with %s"
	whyWholeFirst = "%s has to be whole where %s follows"
	whyTooMuch    = "%s %s is not below %d beside %s"
	whyTwoDigits  = "after %s write two digits, like 1 m 05"
	whyKind       = "%s is %s, and this is %s"
	whyNegative   = "%s is above 0 and has no sign"
	whyZero       = "%s is above 0; leave it empty where it was not taken"
	whyWhole      = "%s is a whole number"
	whyFar        = "%s is more than 100 m"
	whyLarge      = "%s is larger than anything measured here"
	whyBelow      = "%s is below %s"
	whyAbove      = "%s is above %s"
	whyThousands  = "the point or comma may be between thousands or before decimals"
	whyQuote      = "the mark may be between thousands or mean feet"
	whyFeet       = "tenths of a foot are not inches"
	whyBareFrac   = "a fraction is read off a tape in inches"

	noteDivision = "a tape in inches is divided to 1/16 in"
)
