package guide

import (
	"fyne.io/fyne/v2/lang"

	"ogive/geometry/hand"
	"ogive/geometry/scale"
	"ogive/ui/marking"
)

// words name a point and say how to find it on skin. The places are common
// practice, no source; where the joint line lies is from memory of surface
// anatomy.
type words struct{ head, how string }

// sayWanted is what is said of the wanted spot.
func sayWanted(s marking.State, spot marking.Spot) words {
	switch spot.Kind {
	case marking.ScalePoint:
		if s.Method == scale.ByCard {
			return sayCorner(spot.N)
		}
		return sayTick(spot.N)
	case marking.JointPoint:
		if s.View == hand.Palmar {
			return sayPalmarJoint(spot)
		}
		return sayDorsalJoint(spot)
	case marking.SeedPoint:
		return saySeed(spot)
	case marking.AxisPoint:
		return sayAxis(spot.N)
	}
	return sayJunction(spot.N)
}

func sayTick(n int) words {
	if n == 0 {
		return words{lang.L("First tick on the ruler"),
			lang.L("A tick near one end of the ruler, at the edge where the ticks begin. Take two ticks as far apart as the photograph shows.")}
	}
	return words{lang.L("Second tick on the ruler"),
		lang.L("A tick near the other end, on the same side of the ruler. Then say how many millimetres lie between the two.")}
}

func sayCorner(n int) words {
	switch n {
	case 0:
		return words{lang.L("First corner of the card"),
			lang.L("At one end of a long side: where the two straight sides would meet, a little outside the rounded corner.")}
	case 1:
		return words{lang.L("Second corner of the card"),
			lang.L("At the other end of the same long side: where the straight sides would meet.")}
	case 2:
		return words{lang.L("Third corner of the card"),
			lang.L("Go on round the card, not across: where the straight sides would meet.")}
	}
	return words{lang.L("Fourth corner of the card"),
		lang.L("The last one: where the straight sides would meet.")}
}

func sayDorsalJoint(spot marking.Spot) words {
	of := digit(spot.Digit)
	switch spot.Joint {
	case hand.MCP:
		return words{lang.L("{{.Digit}}: MCP joint", of),
			lang.L("On the middle line of the finger, just distal of the top of the knuckle that a fist shows. On a flat hand: the middle of the round field of dimples over the knuckle.")}
	case hand.PIP:
		if spot.Digit == hand.Thumb {
			return words{lang.L("Thumb: IP joint"), lang.L("The middle of the cross wrinkles over the thumb's last joint.")}
		}
		return words{lang.L("{{.Digit}}: PIP joint", of),
			lang.L("The middle of the cross wrinkles over the middle joint of the finger, on its middle line.")}
	case hand.DIP:
		return words{lang.L("{{.Digit}}: DIP joint", of),
			lang.L("The middle of the fine wrinkles over the last joint, proximal of the nail.")}
	}
	return words{lang.L("{{.Digit}}: tip", of), lang.L("The end of the finger's skin, not of the nail.")}
}

func sayPalmarJoint(spot marking.Spot) words {
	of := digit(spot.Digit)
	switch spot.Joint {
	case hand.MCP:
		return words{lang.L("{{.Digit}}: basal crease", of),
			lang.L("The most proximal of the creases at the root of the finger, where it crosses the finger's middle line.")}
	case hand.PIP:
		if spot.Digit == hand.Thumb {
			return words{lang.L("Thumb: IP crease"), lang.L("The crease across the thumb's last joint, on its middle line.")}
		}
		return words{lang.L("{{.Digit}}: PIP crease", of),
			lang.L("The crease across the middle joint, on the finger's middle line; where it is double, between the two.")}
	case hand.DIP:
		return words{lang.L("{{.Digit}}: DIP crease", of),
			lang.L("The crease across the last joint, on the finger's middle line.")}
	}
	return words{lang.L("{{.Digit}}: tip", of), lang.L("The end of the finger's skin, not of the nail.")}
}

func saySeed(spot marking.Spot) words {
	radial, ulnar := spot.Web.Digits()
	names := map[string]any{"Web": webName(spot.Web), "On": digitName(radial), "Facing": digitName(ulnar)}
	switch spot.N {
	case 0:
		return words{lang.L("{{.Web}}: edge of the {{.On}}", names),
			lang.L("On the side that faces the {{.Facing}}, well beyond the place where the curve of the web has become straight.", names)}
	case 1:
		return words{lang.L("{{.Web}}: crown", names),
			lang.L("The most proximal point of the web's edge, in the gap between the two fingers.")}
	}
	names["On"], names["Facing"] = names["Facing"], names["On"]
	return words{lang.L("{{.Web}}: edge of the {{.On}}", names),
		lang.L("On the side that faces the {{.Facing}}, well beyond the place where the curve of the web has become straight.", names)}
}

func sayAxis(n int) words {
	if n == 0 {
		return words{lang.L("Long axis of the finger: first point"),
			lang.L("On the middle line of the finger seen from the side, near the web.")}
	}
	return words{lang.L("Long axis of the finger: second point"),
		lang.L("On the same middle line, as near to the fingertip as it stays straight.")}
}

func sayJunction(n int) words {
	which := map[string]any{"N": n + 1}
	switch n {
	case 0:
		return words{lang.L("Junction of the skins: first point"),
			lang.L("Where the thick ridged skin of the palm meets the thin skin of the back. Begin at the end towards the back of the hand.")}
	case 1, 2:
		return words{lang.L("Junction of the skins: point {{.N}}", which),
			lang.L("Go on along the same line towards the palm, only as far as it runs straight across the web.")}
	}
	return words{lang.L("Junction of the skins: point {{.N}}", which),
		lang.L("At the end towards the palm, where the line is about to bend along the finger.")}
}

// sayDone is what is said when nothing more is wanted, and what can be done next.
func sayDone(s marking.State) words {
	if s.LacksLength() {
		return words{lang.L("There is no scale yet"),
			lang.L("Say how many millimetres lie between the two ticks; then everything is measured.")}
	}
	if s.Reference() == nil {
		return words{lang.L("There is no scale yet"),
			lang.L("Without it nothing can be measured. Choose Scale above and mark a ruler or a card.")}
	}
	skipped := 0
	for _, spot := range s.Order() {
		if s.Skipped[spot] {
			skipped++
		}
	}
	next := lang.L("Look along each border and drag it where it strays from the skin. Then copy the figures or save the marked picture.")
	if skipped > 0 {
		return words{lang.L("All is placed but what you skipped"), next}
	}
	return words{lang.L("All is placed"), next}
}

func sayProposed() words {
	return words{lang.L("Are these webs right?"),
		lang.L("The program has found borders and crowns by itself. Look at each; accept them, or drag what is wrong.")}
}

func sayHand() words {
	return words{lang.L("Which hand is it?"),
		lang.L("A swapped side turns every name round: look at the thumb before you choose.")}
}

func digit(d hand.Digit) map[string]any {
	return map[string]any{"Digit": map[hand.Digit]string{
		hand.Thumb: lang.L("Thumb"), hand.IndexFinger: lang.L("Index finger"), hand.Middle: lang.L("Middle finger"),
		hand.Ring: lang.L("Ring finger"), hand.Little: lang.L("Little finger"),
	}[d]}
}

// digitName is the digit within a sentence.
func digitName(d hand.Digit) string {
	return map[hand.Digit]string{
		hand.Thumb: lang.L("thumb"), hand.IndexFinger: lang.L("index finger"), hand.Middle: lang.L("middle finger"),
		hand.Ring: lang.L("ring finger"), hand.Little: lang.L("little finger"),
	}[d]
}

func webName(w hand.Web) string {
	return map[hand.Web]string{
		hand.FirstWeb: lang.L("First web"), hand.SecondWeb: lang.L("Second web"),
		hand.ThirdWeb: lang.L("Third web"), hand.FourthWeb: lang.L("Fourth web"),
	}[w]
}
