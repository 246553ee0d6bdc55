// Package hand names the parts of a hand: digits, webs, joints, sides, views.
//
// Names are those of the marks file (README.md): "middle", "left", "dorsal".
// A web is known by its number, 1 (thumb-index) to 4 (ring-little):
//
//	radial, ulnar := hand.ThirdWeb.Digits() // middle, ring
package hand

import (
	"fmt"
	"strings"
)

// Digit is one of the five digits, from the radial side.
type Digit int

// The digits.
const (
	Thumb Digit = iota + 1
	IndexFinger
	Middle
	Ring
	Little
)

// Digits lists all digits from radial to ulnar.
var Digits = []Digit{Thumb, IndexFinger, Middle, Ring, Little}

var digitNames = map[Digit]string{Thumb: "thumb", IndexFinger: "index", Middle: "middle", Ring: "ring", Little: "little"}

// String is the digit's name in the marks file.
func (d Digit) String() string { return nameOr(digitNames, d, "digit") }

// ParseDigit is the digit of that name.
func ParseDigit(name string) (Digit, error) { return parse(digitNames, name, "digit") }

// Web is a web by its number.
type Web int

// The webs.
const (
	FirstWeb Web = iota + 1
	SecondWeb
	ThirdWeb
	FourthWeb
)

// Webs lists all webs from radial to ulnar.
var Webs = []Web{FirstWeb, SecondWeb, ThirdWeb, FourthWeb}

// Valid reports whether there is such a web.
func (w Web) Valid() bool { return w >= FirstWeb && w <= FourthWeb }

// Digits are the digits on the radial and on the ulnar side of w.
func (w Web) Digits() (radial, ulnar Digit) { return Digit(w), Digit(w) + 1 }

// String is the web's ordinal: "third web".
func (w Web) String() string {
	if !w.Valid() {
		return fmt.Sprintf("web %d", int(w))
	}
	return [...]string{"first", "second", "third", "fourth"}[w-1] + " web"
}

// Side is the left or the right hand.
type Side int

// The sides.
const (
	Left Side = iota + 1
	Right
)

var sideNames = map[Side]string{Left: "left", Right: "right"}

// String is "left" or "right".
func (s Side) String() string { return nameOr(sideNames, s, "side") }

// ParseSide is the side of that name.
func ParseSide(name string) (Side, error) { return parse(sideNames, name, "hand") }

// Other is the other hand.
func (s Side) Other() Side { return Left + Right - s }

// View is the direction from which the hand was photographed.
type View int

// The views. Web view looks into one web, for the slope of the skin junction.
const (
	Dorsal View = iota + 1
	Palmar
	WebView
)

var viewNames = map[View]string{Dorsal: "dorsal", Palmar: "palmar", WebView: "web"}

// String is the view's name in the marks file.
func (v View) String() string { return nameOr(viewNames, v, "view") }

// ParseView is the view of that name.
func ParseView(name string) (View, error) { return parse(viewNames, name, "view") }

// Joint is a landmark along a digit. In the palmar view MCP stands for the most
// proximal basal digital crease and PIP for the PIP crease.
type Joint int

// The joints, from proximal to distal.
const (
	MCP Joint = iota + 1
	PIP
	DIP
	Tip
)

// Joints lists all joints from proximal to distal.
var Joints = []Joint{MCP, PIP, DIP, Tip}

var jointNames = map[Joint]string{MCP: "mcp", PIP: "pip", DIP: "dip", Tip: "tip"}

// String is the joint's name in the marks file.
func (j Joint) String() string { return nameOr(jointNames, j, "joint") }

// ParseJoint is the joint of that name.
func ParseJoint(name string) (Joint, error) { return parse(jointNames, name, "joint") }

// Label is how the joint is called in a view: in the palmar view creases stand
// for the joints.
func (j Joint) Label(v View) string {
	switch {
	case v == Palmar && j == MCP:
		return "basal digital crease"
	case v == Palmar && j == PIP:
		return "PIP crease"
	case j == Tip:
		return "tip"
	}
	return strings.ToUpper(j.String())
}
