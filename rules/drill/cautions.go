package drill

// Cautions are those of the drill, beside those of rules. They stand wherever somebody is about to load a tether.
func Cautions() []string {
	return []string{
		"Nobody is dropped: hitches are eased by hand, with the slack taken up first. A test weight alone drops freely, with nobody under it.",
		"A second person stands within reach, and both have gone through the rescue plan, before the boots leave the ground.",
		"The kit is inspected, and every knot, connector and gate looked at by both.",
		"Hanging without moving is dangerous within minutes: keep the legs moving, watch the clock, come down at the first sign of faintness, numbness or nausea.",
		"What is told here is length and force by a model. Makers' instructions, local codes and licensed practice come first.",
	}
}
