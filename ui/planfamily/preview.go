package planfamily

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"

	"ogive/imaging/family"
	"ogive/imaging/wording"
	"ogive/ui/column"
	"ogive/ui/look"
)

// readable is the width of the page over the window: a line that is read with
// ease.
const readable = 640

// see shows the page in large letters.
func (p *Panel) see() {
	p.Finish()
	over := dialog.NewCustom(lang.L("The family's page"), lang.L("Close"), page(p.Points()), p.win)
	size := p.win.Canvas().Size()
	over.Resize(fyne.NewSize(min(size.Width-40, readable+120), size.Height-60))
	over.Show()
}

// page is the page as it will read.
func page(points []family.Point) fyne.CanvasObject {
	page := column.NewPage()
	page.Add(column.Title(""), column.Large(family.Title, true))
	for _, pt := range points {
		if pt.Title != "" {
			page.Add(column.Heading(pt.Title))
		}
		page.Add(column.Large(pt.Text, false))
	}
	page.Add(column.Rule(), column.Remark(wording.Term(wording.Caution)))
	ground := canvas.NewRectangle(look.Colour(look.Card))
	ground.CornerRadius = look.Size(theme.SizeNameInputRadius)
	return container.NewStack(ground, container.New(layout.NewCustomPaddedLayout(8, 12, 36, 28), page.Object()))
}

// text is the page to be pasted elsewhere. The caution goes with all that leaves
// the program.
func text(points []family.Point) string {
	out := []string{family.Title}
	for _, pt := range points {
		out = append(out, strings.TrimSpace(pt.Title+"\n"+pt.Text))
	}
	return strings.Join(append(out, wording.Term(wording.Caution)), "\n\n") + "\n"
}

func (p *Panel) copy() {
	p.Finish()
	fyne.CurrentApp().Clipboard().SetContent(text(p.Points()))
	p.said.Set(lang.L("✓ Copied: {{.Count}} points", map[string]any{"Count": len(p.Points())}))
	p.page.Arrange()
}
