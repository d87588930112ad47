package rules

// CheckEffect is what base input i of the model adds to the standard uncertainty
// of c's margin, with its sign, at the end that decides c; in the margin's unit,
// NaN where both its steps leave the domain.
func (a *Assessment) CheckEffect(i int, c CheckID) float64 {
	return a.p.Contribution(i, int(a.Deciding(c)))
}

// PoseEffect is what base input i of the model adds to the standard uncertainty
// of the pose with that name, with its sign, in the pose's unit; 0 where there
// is no such pose.
func (a *Assessment) PoseEffect(i int, name string) float64 {
	if o := outputOfPose(name); o >= 0 {
		return a.p.Contribution(i, o)
	}
	return 0
}
