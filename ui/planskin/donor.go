package planskin

import (
	"strings"

	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/planfile"
	"ogive/ui/column"
	"ogive/ui/flow"
	"ogive/ui/look"
)

// donor is one site of the list.
type donor struct {
	*column.Block
	list *donors
	at   int

	ground    *canvas.Rectangle
	name      *column.Field
	gave      *column.Field
	words     [2]*canvas.Text // around how much it gave
	drawbacks *column.Field
	away      *widget.Button
	problem   *column.Notice
}

// What a plan file takes.
const (
	longestName = 100
	longestText = 8000
	mostSkin    = 1000
)

func newDonor(list *donors, at int) *donor {
	d := &donor{list: list, at: at, ground: canvas.NewRectangle(nil), problem: column.NewNotice("")}
	d.name = column.NewField(lang.L("Name, such as groin"))
	d.gave = column.NewNumber("")
	d.drawbacks = column.NewArea(lang.L("Drawbacks: a visible scar, hair, darker skin…"), 2)
	d.words = [2]*canvas.Text{canvas.NewText(lang.L("gave"), nil), canvas.NewText("cm²", nil)}
	d.away = widget.NewButtonWithIcon("", theme.DeleteIcon(), func() { list.remove(d.at) })
	d.away.Importance = widget.LowImportance
	d.drawbacks.OnHeight = list.panel.page.Arrange
	for _, f := range []*column.Field{d.name, d.gave, d.drawbacks} {
		f.OnDone = func(string) { d.give() }
	}
	d.Block = column.NewBlock(d.stand, d.paint, d.ground, d.name, d.away, d.words[0], d.gave, d.words[1], d.drawbacks, d.problem)
	return d
}

func (d *donor) show(kept planfile.Donor) {
	d.problem.Set("")
	d.name.Fill(kept.Name)
	d.gave.Fill(column.Plain(kept.Gave))
	d.drawbacks.Fill(kept.Drawbacks)
}

func (d *donor) finish() {
	d.name.Finish()
	d.gave.Finish()
	d.drawbacks.Finish()
}

// give takes the site as it is written now.
func (d *donor) give() {
	name := strings.TrimSpace(d.name.Text)
	gave, _, ok := column.Number(d.gave.Text)
	switch {
	case name == "":
		d.refuse(lang.L("Give the site a name, so that it can be kept."))
	case len(name) > longestName:
		d.refuse(lang.L("Give the site a shorter name."))
	case len(d.drawbacks.Text) > longestText:
		d.refuse(lang.L("The drawbacks are too long to be kept: shorten them."))
	case !ok || gave > mostSkin:
		d.refuse(lang.L("“{{.Text}}” is no area: give square centimetres, such as 12, or leave it empty.", map[string]any{"Text": d.gave.Text}))
	default:
		to := planfile.Donor{Name: name, Gave: gave, Drawbacks: strings.TrimSpace(d.drawbacks.Text)}
		d.list.set(d.at, lang.L("donor site {{.Name}}", map[string]any{"Name": name}), to)
	}
}

// refuse leaves the plan as it is.
func (d *donor) refuse(why string) {
	d.problem.Set(why)
	d.list.panel.page.Arrange()
}

func (d *donor) paint() {
	d.ground.FillColor, d.ground.CornerRadius = look.Colour(look.Card), look.Size(theme.SizeNameInputRadius)
	d.ground.StrokeColor, d.ground.StrokeWidth = look.Colour(look.Hairline), 1
	for _, t := range d.words {
		t.Color, t.TextSize = look.Colour(theme.ColorNameForeground), look.Size(theme.SizeNameText)
	}
}

func (d *donor) stand(room float32) float32 {
	const rim, gap, field, below = 8, 6, 84, 10
	inner, high, away := room-2*rim, d.name.MinSize().Height, d.away.MinSize().Width
	y := float32(rim)
	flow.Put(d.name, rim, y, inner-away-gap, high)
	flow.Put(d.away, room-rim-away, y, away, high)
	y += high + gap
	x := float32(rim)
	middle := y + (high-d.words[0].MinSize().Height)/2
	flow.Put(d.words[0], x+4, middle, d.words[0].MinSize().Width, d.words[0].MinSize().Height)
	x += d.words[0].MinSize().Width + 4 + gap
	flow.Put(d.gave, x, y, field, high)
	flow.Put(d.words[1], x+field+gap, middle, d.words[1].MinSize().Width, d.words[1].MinSize().Height)
	y += high + gap
	lines := d.drawbacks.HeightAt(inner)
	flow.Put(d.drawbacks, rim, y, inner, lines)
	y += lines + rim
	if d.problem.Visible() {
		h := d.problem.HeightAt(inner)
		flow.Put(d.problem, rim, y, inner, h)
		y += h
	}
	flow.Put(d.ground, 0, 0, room, y)
	return y + below
}
