package beside

import (
	"fyne.io/fyne/v2"

	"ogive/ui/look"
)

// columns gives the sheet its width and the photographs the rest.
type columns struct{}

// sheetWidth is the width of the sheet in a window of that width.
func sheetWidth(window float32) float32 {
	return min(max(look.Size(look.Column)+40, window*0.29), 440)
}

func (columns) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(700, 400) }

func (columns) Layout(parts []fyne.CanvasObject, size fyne.Size) {
	gap := look.Size(look.Gap)
	right := sheetWidth(size.Width)
	left := size.Width - right - 3*gap
	parts[0].Move(fyne.NewPos(gap, 0))
	parts[0].Resize(fyne.NewSize(left, size.Height-gap))
	parts[1].Move(fyne.NewPos(left+2*gap, 0))
	parts[1].Resize(fyne.NewSize(right, size.Height-gap))
}

// plates stands the two photographs over each other or side by side, whichever
// shows the first of them larger.
type plates struct {
	aspect func() float32 // width over height of the first photograph
}

// firstShare is the part of the room that the first photograph takes.
const firstShare = 0.63

func (plates) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(300, 360) }

func (p plates) Layout(parts []fyne.CanvasObject, size fyne.Size) {
	gap := look.Size(look.Gap)
	over := fyne.NewSize(size.Width, (size.Height-gap)*firstShare)
	along := fyne.NewSize((size.Width-gap)*firstShare, size.Height)
	first, second, at := over, fyne.NewSize(size.Width, size.Height-over.Height-gap), fyne.NewPos(0, over.Height+gap)
	if p.seen(along) > p.seen(over) {
		first, second, at = along, fyne.NewSize(size.Width-along.Width-gap, size.Height), fyne.NewPos(along.Width+gap, 0)
	}
	parts[0].Move(fyne.Position{})
	parts[0].Resize(first)
	parts[1].Move(at)
	parts[1].Resize(second)
}

// seen is the width at which the photograph is seen in a room of that size.
func (p plates) seen(room fyne.Size) float32 {
	return min(room.Width, (room.Height-captionHeight(room.Width))*p.aspect())
}
