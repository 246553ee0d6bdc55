package guide

import (
	"fyne.io/fyne/v2/lang"

	"ogive/geometry/hand"
	"ogive/geometry/scale"
	"ogive/imaging/wording"
	"ogive/ui/marking"
)

// words name a point, or say how the work stands, and what is to be done.
type words struct{ head, how string }

// sayWanted names the wanted spot, as it is named everywhere, and says how to
// find it on skin. The places are common practice, no source; where the joint
// line lies is from memory of surface anatomy.
func sayWanted(s marking.State, spot marking.Spot) words {
	return words{wording.Sentence(spot.Name(s.View)), onSkin(s, spot)}
}

func onSkin(s marking.State, spot marking.Spot) string {
	switch spot.Kind {
	case marking.ScalePoint:
		if s.Method == scale.ByCard {
			return cornerOfCard(spot.N)
		}
		return tickOnRuler(spot.N)
	case marking.JointPoint:
		return joint(spot, s.View)
	case marking.SeedPoint:
		return seed(spot)
	case marking.AxisPoint:
		return axis(spot.N)
	}
	return junction(spot.N)
}

func tickOnRuler(n int) string {
	if n == 0 {
		return lang.L("A tick near one end of the ruler, at the edge where the ticks begin. Take two ticks as far apart as the photograph shows.")
	}
	return lang.L("A tick near the other end, on the same side of the ruler. Then say how many millimetres lie between the two.")
}

func cornerOfCard(n int) string {
	switch n {
	case 0:
		return lang.L("The first corner of the card, at one end of a long side: where the two straight sides would meet, a little outside the rounded corner.")
	case 1:
		return lang.L("The corner at the other end of the same long side: where the straight sides would meet.")
	case 2:
		return lang.L("The next corner: go on round the card, not across, to where the straight sides would meet.")
	}
	return lang.L("The last corner: where the straight sides would meet.")
}

func joint(spot marking.Spot, view hand.View) string {
	thumb, palm := spot.Digit == hand.Thumb, view == hand.Palmar
	switch {
	case spot.Joint == hand.Tip:
		return lang.L("The end of the finger's skin, not of the nail.")
	case spot.Joint == hand.MCP && palm:
		return lang.L("The most proximal of the creases at the root of the finger, where it crosses the finger's middle line.")
	case spot.Joint == hand.MCP:
		return lang.L("On the finger's middle line, just distal of the top of its knuckle in a fist; on a flat hand, the middle of the field of dimples.")
	case spot.Joint == hand.DIP && palm:
		return lang.L("The crease across the last joint, on the finger's middle line.")
	case spot.Joint == hand.DIP:
		return lang.L("The middle of the fine wrinkles over the last joint, proximal of the nail.")
	case thumb && palm:
		return lang.L("The crease across the thumb's last joint, on its middle line.")
	case thumb:
		return lang.L("The middle of the cross wrinkles over the thumb's last joint.")
	case palm:
		return lang.L("The crease across the middle joint, on the finger's middle line; where it is double, between the two.")
	}
	return lang.L("The middle of the cross wrinkles over the middle joint of the finger, on its middle line.")
}

func seed(spot marking.Spot) string {
	if spot.N == 1 {
		return lang.L("The most proximal point of the web's edge, in the gap between the two fingers.")
	}
	on, facing := spot.Web.Digits()
	if spot.N == 2 {
		on, facing = facing, on
	}
	return lang.L("The edge of the {{.On}}, on the side that faces the {{.Facing}}, well beyond the place where the curve of the web has become straight.",
		map[string]any{"On": wording.Finger(on), "Facing": wording.Finger(facing)})
}

func axis(n int) string {
	if n == 0 {
		return lang.L("On the middle line of the finger seen from the side, near the web.")
	}
	return lang.L("On the same middle line, as near to the fingertip as it stays straight.")
}

func junction(n int) string {
	switch n {
	case 0:
		return lang.L("Where the thick ridged skin of the palm meets the thin skin of the back. Begin at the end towards the back of the hand.")
	case 1, 2:
		return lang.L("Go on along the same line towards the palm, only as far as it runs straight across the web.")
	}
	return lang.L("At the end towards the palm, where the line is about to bend along the finger.")
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
	next := lang.L("Drag a border where it strays from the skin; then copy the figures or save the picture.")
	if skipped > 0 {
		return words{lang.L("All is placed but what you skipped"), next}
	}
	return words{lang.L("All is placed"), next}
}

func sayProposed() words {
	return words{lang.L("Are these webs right?"),
		lang.L("The program has found borders and crowns by itself. Look at each; accept them, or drag what is wrong.")}
}

// sayHand does not ask which hand it is: the panel over the photograph does.
func sayHand() words {
	return words{lang.L("Look at the thumb first"),
		lang.L("It tells left from right. A swapped side would turn every name and every verdict round.")}
}
