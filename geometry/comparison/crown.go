package comparison

// CrownsDiffer reports whether the two crown angles certainly differ, the whole
// interval lying beside 0. How far they may differ in equal hands is not
// published, so there is no verdict.
func (w Web) CrownsDiffer() bool {
	return w.CrownAngle != nil && max(w.CrownAngle.Value, -w.CrownAngle.Value) > w.CrownAngle.U95
}
