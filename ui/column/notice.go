package column

import (
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/ui/flow"
	"ogive/ui/look"
)

// Notice is what must not be overlooked: a sign and words on a ground of their
// own. Without words it takes no room.
type Notice struct {
	Block
	ground, rail *canvas.Rectangle
	sign         *widget.Icon
	text         *Text
}

// NewNotice is a notice.
func NewNotice(words string) *Notice {
	n := &Notice{ground: canvas.NewRectangle(nil), rail: canvas.NewRectangle(nil), text: Body(words)}
	n.text.below = 0
	n.sign = widget.NewIcon(look.ColouredIcon(look.IconWarning, look.OnNotice))
	n.begin(n, n.stand, n.paint, n.ground, n.rail, n.sign, n.text)
	flow.Visible(n, words != "")
	return n
}

// Set changes the words, and reports whether the height may have changed.
func (n *Notice) Set(words string) bool {
	changed := n.text.Words() != words
	n.text.Set(words)
	flow.Visible(n, words != "")
	return changed
}

// Words are the words.
func (n *Notice) Words() string { return n.text.Words() }

func (n *Notice) paint() {
	n.ground.FillColor, n.ground.CornerRadius = look.Colour(look.Notice), look.Size(theme.SizeNameInputRadius)
	n.rail.FillColor = look.Colour(look.Doubtful)
}

func (n *Notice) stand(width float32) float32 {
	if !n.Visible() {
		return 0
	}
	const rail, sign, rim, below = 5, 22, 9, 10
	left := float32(rail + sign + 16)
	h := n.text.HeightAt(width - left - rim)
	flow.Put(n.text, left, rim, width-left-rim, h)
	flow.Put(n.sign, rail+7, rim-1, sign, sign)
	flow.Put(n.ground, 0, 0, width, h+2*rim)
	flow.Put(n.rail, 0, 0, rail, h+2*rim)
	return h + 2*rim + below
}
