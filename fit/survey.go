package fit

//go:generate go run ./internal/surveygen -survey ../testdata/survey/ansur2.csv -out survey_gen.go

// A BodyPart is a length of the body that the body survey ties to stature, in
// millimetres, barefoot and upright.
type BodyPart int

// The body parts, in the order of the survey's tables.
const (
	PartThigh BodyPart = iota // hip point to middle of the kneecap
	PartShin                  // middle of the kneecap to the floor
	PartNose                  // nose above the hip point, sitting: 45 mm under the eye
	PartFull                  // wrist above the hip point, sitting, arm stretched straight up
	PartDown                  // wrist above the hip point, arm hanging: below it where negative
	PartWaist                 // navel above the floor

	NumBodyParts
)

// A Regression predicts the body parts of a person from stature and, where it
// was taken, inseam.
type Regression struct {
	// Beta holds for each part the intercept (mm), the slope on stature and
	// the slope on inseam (mm per mm, 0 where inseam is not used).
	Beta [NumBodyParts][3]float64
	// Cov is the covariance (mm²) of what persons of one stature and inseam
	// differ by from the prediction, symmetric and positive definite.
	Cov [NumBodyParts][NumBodyParts]float64
}

// SurveyRegression is the least-squares regression of the body parts over the
// body survey for a person of sex s, on stature alone or on stature and inseam.
// Unsaid weighs the women and the men of the survey equally.
//
// Source: the 2012 US Army Anthropometric Survey (Gordon et al. 2014,
// NATICK/TR-15/007), public working databases: 4,082 men and 1,986 women.
func SurveyRegression(s Sex, withInseam bool) Regression {
	if withInseam {
		return surveyStatureInseam[s]
	}
	return surveyStature[s]
}
