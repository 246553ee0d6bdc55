package plansheet

import (
	"errors"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2/lang"

	"ogive/imaging/planning"
	"ogive/imaging/sheet"
	"ogive/imaging/wholefile"
	"ogive/ui/saving"
)

// kind is a kind of file that can be saved.
type kind struct {
	ending string // of its name
	after  string // what its name is made of beside the case's
	make   func(c sheet.Content, paper sheet.Paper) ([]byte, error)
}

var (
	asPDF = kind{".pdf", "sheet", func(c sheet.Content, paper sheet.Paper) ([]byte, error) { return c.PDF(paper) }}
	asSVG = kind{".svg", "outlines", func(c sheet.Content, _ sheet.Paper) ([]byte, error) { return c.SVG() }}
)

// ask asks where a file is to be saved.
func (p *Panel) ask(k kind) {
	title := lang.L("Save the sheet")
	if k.ending == asSVG.ending {
		title = lang.L("Save the outlines")
	}
	name := k.after + k.ending
	if p.name != "" {
		name = p.name + "-" + name
	}
	saving.Ask(p.win, saving.Question{Title: title, Hint: lang.L("A name that ends in {{.Ending}}.", map[string]any{"Ending": k.ending}),
		Folder: p.folder, Name: name, Refused: func(path string) bool { return p.refusal(k, path) != nil }},
		func(path string) { p.save(k, path) }, func() {})
}

// refusal is why a file can't be saved there, nil if it can.
func (p *Panel) refusal(k kind, path string) error {
	switch {
	case !strings.EqualFold(filepath.Ext(path), k.ending):
		return errors.New(lang.L("{{.Name}} was not saved: give a name that ends in {{.Ending}}.", map[string]any{"Name": filepath.Base(path), "Ending": k.ending}))
	case p.Refused != nil && p.Refused(path):
		return errors.New(lang.L("{{.Name}} was not saved: that file is needed as it is. Give another name.", map[string]any{"Name": filepath.Base(path)}))
	case p.Content == nil:
		return errors.New(lang.L("The sheet can't be made here."))
	}
	return nil
}

// save makes and writes a file beside Fyne's goroutine.
func (p *Panel) save(k kind, path string) {
	p.state.Set("")
	p.problem.Set("")
	if err := p.refusal(k, path); err != nil {
		p.fail(err.Error())
		return
	}
	plan, paper, withFamily, content := p.shown(), papers[p.paper.Chosen], p.family.Checked, p.Content
	whole := encoded(p.plan.File)
	p.busy = true
	p.state.Set(lang.L("Writing {{.Name}}…", map[string]any{"Name": filepath.Base(path)}))
	p.refresh()
	p.apart(func() {
		err := write(k, path, plan, paper, withFamily, content)
		p.do(func() {
			p.busy = false
			if err != nil {
				p.state.Set("")
				p.fail(lang.L("{{.Name}} was not saved: {{.Problem}}.", map[string]any{"Name": filepath.Base(path), "Problem": strings.TrimRight(err.Error(), ".")}))
				return
			}
			p.folder = filepath.Dir(path)
			p.saved = whole
			p.state.Set("✓ " + lang.L("Saved as {{.Name}} in {{.Folder}}", map[string]any{"Name": filepath.Base(path), "Folder": filepath.Dir(path)}))
			p.refresh()
		})
	})
}

func (p *Panel) fail(why string) {
	p.problem.Set(why)
	p.refresh()
}

func write(k kind, path string, plan planning.Plan, paper sheet.Paper, withFamily bool, content func(planning.Plan) (sheet.Content, error)) error {
	c, err := content(plan)
	if err != nil {
		return err
	}
	if !withFamily {
		c.Family = nil
	}
	data, err := k.make(c, paper)
	if err != nil {
		return err
	}
	return wholefile.Write(path, data)
}
