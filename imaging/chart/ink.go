package chart

import "ogive/imaging/charting"

// Ink is the colours of a chart: Own is the operated hand, Other the other hand,
// Normal the normal band.
type Ink = charting.Ink

// Paper is ink on paper, Chalk is chalk on slate.
var (
	Paper = charting.Paper
	Chalk = charting.Chalk
)
