package planskin

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/planfile"
	"ogive/ui/column"
)

// donors is the surgeon's own list of donor sites.
type donors struct {
	panel   *Panel
	heading *column.Text
	intro   *column.Text
	list    *column.Block
	rows    []*donor
	drafted bool // the last row is no site of the plan yet
	add     *widget.Button
	stand   *column.Block // of the button
}

// mostDonors are as many as a plan file takes.
const mostDonors = 30

func newDonors(p *Panel) *donors {
	d := &donors{panel: p, heading: column.Heading(lang.L("Donor sites"))}
	d.intro = column.Remark("")
	d.list = column.NewList()
	d.add = widget.NewButtonWithIcon(lang.L("Add a donor site"), theme.ContentAddIcon(), d.draft)
	d.stand = column.Line(d.add)
	return d
}

func (d *donors) objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{d.heading, d.intro, d.list, d.stand}
}

func (d *donors) show(kept []planfile.Donor) {
	want := len(kept)
	if d.drafted {
		want++
	}
	d.intro.Set(lang.L("Your own list: how much each site gave, and what spoke against it. It is printed on the sheet."))
	if want == 0 {
		d.intro.Set(lang.L("None yet. Write down where you have taken skin from, how much it gave, and what spoke against it. The list is yours and is printed on the sheet."))
	}
	for len(d.rows) < want {
		d.rows = append(d.rows, newDonor(d, len(d.rows)))
	}
	d.rows = d.rows[:want]
	for i, row := range d.rows {
		if i < len(kept) {
			row.show(kept[i])
		}
	}
	d.list.Replace(objectsOf(d.rows)...)
	if full := want >= mostDonors || d.drafted; full != d.add.Disabled() {
		if full {
			d.add.Disable()
		} else {
			d.add.Enable()
		}
	}
}

func objectsOf(rows []*donor) []fyne.CanvasObject {
	var out []fyne.CanvasObject
	for _, r := range rows {
		out = append(out, r)
	}
	return out
}

// draft is a site that has no name yet: a plan file can't hold it.
func (d *donors) draft() {
	d.finish()
	if d.drafted {
		return
	}
	d.drafted = true
	d.show(d.panel.file.Donors)
	d.panel.page.Arrange()
	last := d.rows[len(d.rows)-1]
	last.show(planfile.Donor{})
	if c := fyne.CurrentApp().Driver().CanvasForObject(last.name); c != nil {
		c.Focus(last.name)
	}
}

func (d *donors) finish() {
	for _, r := range slices.Clone(d.rows) {
		r.finish()
	}
}

// isDraft reports whether the row at i is no site of the plan yet.
func (d *donors) isDraft(i int) bool { return d.drafted && i == len(d.panel.file.Donors) }

// set makes the site at i another, or adds it if it was drafted.
func (d *donors) set(i int, step string, to planfile.Donor) {
	if d.isDraft(i) {
		d.drafted = false
		d.panel.change(lang.L("add donor site {{.Name}}", map[string]any{"Name": to.Name}), func(f *planfile.File) { f.Donors = append(f.Donors, to) })
		return
	}
	d.panel.change(step, func(f *planfile.File) {
		if i < len(f.Donors) {
			f.Donors[i] = to
		}
	})
}

func (d *donors) remove(i int) {
	d.finish()
	if d.isDraft(i) {
		d.drafted = false
		d.show(d.panel.file.Donors)
		d.panel.page.Arrange()
		return
	}
	if i >= len(d.panel.file.Donors) {
		return
	}
	name := d.panel.file.Donors[i].Name
	d.panel.change(lang.L("remove donor site {{.Name}}", map[string]any{"Name": name}), func(f *planfile.File) {
		if i < len(f.Donors) {
			f.Donors = slices.Delete(slices.Clone(f.Donors), i, i+1)
		}
	})
}
