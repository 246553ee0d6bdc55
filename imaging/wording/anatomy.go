package wording

import (
	"ogive/geometry/hand"
)

// WebName is the web by its number: "Third web".
func WebName(w hand.Web) string { return Sentence(Web(w)) }

// Web is the web within a sentence: "third web".
func Web(w hand.Web) string {
	switch w {
	case hand.FirstWeb:
		return say("first web", nil)
	case hand.SecondWeb:
		return say("second web", nil)
	case hand.ThirdWeb:
		return say("third web", nil)
	case hand.FourthWeb:
		return say("fourth web", nil)
	}
	return w.String()
}

// WebDigits is the web by its digits: "middle to ring".
func WebDigits(w hand.Web) string {
	if !w.Valid() {
		return ""
	}
	radial, ulnar := w.Digits()
	return say("{{.Radial}} to {{.Ulnar}}", Gaps{"Radial": Digit(radial), "Ulnar": Digit(ulnar)})
}

// Digit is the digit in one word, as in the names of its joints: "ring".
func Digit(d hand.Digit) string {
	switch d {
	case hand.Thumb:
		return say("thumb", nil)
	case hand.IndexFinger:
		return say("index", nil)
	case hand.Middle:
		return say("middle", nil)
	case hand.Ring:
		return say("ring", nil)
	case hand.Little:
		return say("little", nil)
	}
	return d.String()
}

// Finger is the digit within a sentence: "ring finger".
func Finger(d hand.Digit) string {
	switch d {
	case hand.IndexFinger:
		return say("index finger", nil)
	case hand.Middle:
		return say("middle finger", nil)
	case hand.Ring:
		return say("ring finger", nil)
	case hand.Little:
		return say("little finger", nil)
	}
	return Digit(d)
}

// Joint is what a joint's mark stands on: in the palmar view a crease.
func Joint(j hand.Joint, v hand.View) string {
	switch {
	case j == hand.Tip:
		return say("tip", nil)
	case v == hand.Palmar && j == hand.MCP:
		return say("basal crease", nil)
	case v == hand.Palmar && j == hand.PIP:
		return say("PIP crease", nil)
	case v == hand.Palmar && j == hand.DIP:
		return say("DIP crease", nil)
	case j == hand.MCP:
		return say("MCP", nil)
	case j == hand.PIP:
		return say("PIP", nil)
	case j == hand.DIP:
		return say("DIP", nil)
	}
	return j.String()
}

// JointOf is the joint of a digit by its whole name: "ring PIP", "middle finger
// basal crease", since a middle crease would be another. The thumb has one joint beyond its MCP joint, which takes the place
// of PIP.
func JointOf(d hand.Digit, j hand.Joint, v hand.View) string {
	joint, digit := Joint(j, v), Digit(d)
	if v == hand.Palmar && j != hand.Tip {
		digit = Finger(d)
	}
	if d == hand.Thumb && j == hand.PIP {
		joint = say("IP", nil)
		if v == hand.Palmar {
			joint = say("IP crease", nil)
		}
	}
	return say("{{.Digit}} {{.Joint}}", Gaps{"Digit": digit, "Joint": joint})
}

// Photograph is what the photograph shows: "Right hand, back of the hand".
func Photograph(s hand.Side, v hand.View) string {
	view := Gaps{"View": View(v)}
	if s == hand.Left {
		return say("Left hand, {{.View}}", view)
	}
	return say("Right hand, {{.View}}", view)
}

// View is the view in plain words.
func View(v hand.View) string {
	switch v {
	case hand.Dorsal:
		return say("back of the hand", nil)
	case hand.Palmar:
		return say("palm", nil)
	case hand.WebView:
		return say("looking into a web", nil)
	}
	return v.String()
}
