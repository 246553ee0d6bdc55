package plan

import (
	"ogive/geometry/arch"
	"ogive/geometry/plane"
)

// Origin is what a proposal was taken from, the surest first.
type Origin int

// The origins.
const (
	OtherHand Origin = iota + 1
	FellowWebs
	TableOnly
)

// String is the origin in words.
func (o Origin) String() string {
	switch o {
	case OtherHand:
		return "other hand"
	case FellowWebs:
		return "free webs of the same hand"
	case TableOnly:
		return "table of normal values"
	}
	return "unknown origin"
}

// Proposal is an arch to begin a plan with, what it came from and how sure it
// is. It is never more than a beginning.
type Proposal struct {
	Arch   arch.Arch
	Origin Origin
	// Index and Span are those of the proposed arch; their U95 says how well the
	// origin tells them, not how well they can be drawn. Span is zero for a V.
	Index plane.Estimate[plane.Ratio]
	Span  plane.Estimate[plane.Millimetre]
	// CrownU95 is the distance within which the crown would lie in 95 of 100
	// such proposals, as far as marks and scales tell.
	CrownU95 plane.Millimetre
	// Reasons say in sentences what was taken from where; Warnings what to look
	// at again.
	Reasons, Warnings []string
}
