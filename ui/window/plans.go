package window

import (
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"

	"ogive/geometry/hand"
	"ogive/imaging/casebook"
	"ogive/imaging/casebook/example"
	"ogive/imaging/marksfile"
	"ogive/imaging/measure"
	"ogive/imaging/photo"
	"ogive/imaging/planfile"
	"ogive/imaging/planning"
	"ogive/imaging/sheet"
	"ogive/imaging/skin"
	"ogive/ui/look"
	"ogive/ui/plan"
	"ogive/ui/plancolour"
	"ogive/ui/planfamily"
	"ogive/ui/plansheet"
	"ogive/ui/planskin"
)

// plans is the plan's room with its panels, built when it is first needed.
type plans struct {
	planRoom *plan.Room
	skin     *planskin.Panel
	colour   *plancolour.Panel
	family   *planfamily.Panel
	sheet    *plansheet.Panel
	keeping  planKeeper // of the plan that is shown
}

// planHere plans on the photograph that is open.
func (w *Window) planHere() {
	if !w.ready() {
		return
	}
	if w.inCase != nil {
		w.planOn(w.inCase.photograph)
		return
	}
	marks, image := w.work.File(), w.work.Photograph
	w.beginPlan(besideMarks{w.work.Path, w.work.KeptIn()}, func() (marksfile.File, *photo.Photograph, error) {
		return marks, image, nil
	})
}

// planOn plans on a photograph of the casebook.
func (w *Window) planOn(p casebook.Photograph) {
	of, err := w.book.CaseOf(p)
	if err != nil {
		w.cannotOpen(plain(err))
		return
	}
	book, observer := w.book, w.observer()
	w.beginPlan(inBook{book, p, of, observer}, func() (marksfile.File, *photo.Photograph, error) {
		marks, err := marksOf(book, p, observer)
		if err != nil {
			return marks, nil, err
		}
		image, err := photo.Open(book.Path(p))
		return marks, image, err
	})
}

// beginPlan reads what a plan needs and shows it.
func (w *Window) beginPlan(k planKeeper, open func() (marksfile.File, *photo.Photograph, error)) {
	settings, turn := w.settings, w.turn.Add(1)
	w.background(func() func() {
		m, err := planModel(k, open, settings)
		var others []plancolour.Other
		if err == nil {
			others, err = k.photographs()
		}
		return func() {
			switch {
			case w.turn.Load() != turn:
			case err != nil:
				w.cannotOpen(plain(err))
			case w.putAway():
				w.showPlan(k, m, others)
			}
		}
	})
}

// planModel is the plan that is kept, or one that is begun.
func planModel(k planKeeper, open func() (marksfile.File, *photo.Photograph, error), settings measure.Settings) (plan.Model, error) {
	m := plan.Model{Title: k.title()}
	marks, image, err := open()
	if err != nil {
		return m, err
	}
	m.Photograph = image
	if m.Here, err = planning.Prepare(measure.Subject{Marks: marks, Photograph: image}, settings); err != nil {
		return m, err
	}
	kept, there, err := k.load()
	if err != nil {
		return m, err
	}
	if m.Other, err = k.other(kept, settings); err != nil {
		m.Notes, m.Other = append(m.Notes, lang.L("The other hand is not used: {{.Problem}}.", map[string]any{"Problem": plain(err)})), nil
	}
	if there {
		m.File = kept
		return m, nil
	}
	begun, err := planning.Begin(m.Here, m.Other)
	if err != nil { // no web is joined: the user says which is planned
		m.File = planfile.File{Photograph: marks.Photograph, Side: marks.Marks.Side, View: marks.Marks.View}
		return m, nil
	}
	m.File, m.Notes = begun.File, append(m.Notes, begun.Notes...)
	return m, nil
}

func (w *Window) showPlan(k planKeeper, m plan.Model, others []plancolour.Other) {
	if w.planRoom == nil {
		w.buildPlanRoom()
	}
	w.keeping = k
	w.planRoom.OnSave = k.save
	open := func(name string) (*photo.Photograph, error) {
		if name == "" {
			return m.Photograph, nil
		}
		return k.open(name)
	}
	w.colour.Use(w.settings.Norms, open, others...)
	w.sheet.Begin()
	w.sheet.Propose(w.lastFolder(), k.word())
	w.sheet.Refused = k.owns
	w.sheet.Content = func(p planning.Plan) (sheet.Content, error) {
		words := sheet.Words{Code: k.code()}
		words.Colours, words.ColourRemarks = skin.OfPlan(p.File.Patches, open)
		return sheet.Of(p, m.Here, m.Photograph, words), nil
	}
	w.stand(w.planRoom.Object())
	w.planRoom.Show(m)
	w.planRoom.TakeKeys()
}

func (w *Window) buildPlanRoom() {
	r := plan.New(w.win)
	w.planRoom = r
	r.OnBack, r.OnSheet = w.leavePlan, w.showSheet
	w.sheet = plansheet.New(w.win)
	w.skin, w.colour, w.family = planskin.New(w.win), plancolour.New(w.win), planfamily.New(w.win)
	w.skin.OnChange, w.colour.OnChange, w.family.OnChange = r.Change, r.Change, r.Change
	w.colour.OnRedraw = r.Redraw
	w.skin.InHand = r.InHand
	r.AddPanel(lang.L("Skin"), look.IconSkin, w.skin.Object(), nil)
	r.Add(plan.Panel{Title: lang.L("Colour"), Icon: look.IconColour, Object: w.colour.Object(),
		Lines: w.colour.Lines, Handles: w.colour.Handles, OnPlace: w.colour.Place, Wants: w.colour.Wants,
		OnDragHandle: w.colour.DragHandle, OnDropHandle: w.colour.DropHandle})
	r.AddPanel(lang.L("Family"), look.IconFamily, w.family.Object(), nil)
	r.OnChanged = func(p planning.Plan) { w.showPanels(p, r.Web()) }
	r.OnWeb = func(web hand.Web) { w.showPanels(r.Plan(), web) }
}

// showPanels brings the panels to the state of the plan.
func (w *Window) showPanels(p planning.Plan, web hand.Web) {
	f := w.planRoom.File()
	w.skin.Show(f, p, web)
	w.colour.Show(f, p, web)
	w.family.Show(f, p, web)
	w.sheet.Show(f, p, web)
}

// showSheet opens the page from which the plan is printed.
func (w *Window) showSheet() {
	w.finishWriting()
	page := dialog.NewCustom(lang.L("Print"), lang.L("Close"), w.sheet.Object(), w.win)
	page.SetOnClosed(w.planRoom.TakeKeys)
	page.Resize(w.nearlyWhole(560, 820))
	page.Show()
}

// finishWriting takes what is still being written in the panels.
func (w *Window) finishWriting() {
	w.skin.Finish()
	w.colour.Finish()
	w.family.Finish()
}

// finishPlan keeps what was planned last.
func (w *Window) finishPlan() {
	if w.planRoom == nil || w.keeping == nil {
		return
	}
	w.finishWriting()
	w.planRoom.Finish()
	w.keeping = nil
}

// leavePlan goes back to where the photograph came from.
func (w *Window) leavePlan() {
	was := w.keeping
	w.finishPlan()
	switch k := was.(type) {
	case inBook:
		w.openFromCase(k.photograph)
	case besideMarks:
		w.Open(k.photograph)
	default:
		w.toStart()
	}
}

// planExample opens the plan of the example casebook's hand, before its operation.
func (w *Window) planExample() {
	w.openExampleFor(func() {
		found, err := w.book.Cases(example.Code)
		if err != nil || len(found) == 0 {
			w.cannotOpen(lang.L("The example's case is not there any more; open the example casebook and look."))
			return
		}
		photographs, err := w.book.Photographs(found[0].ID)
		if err != nil || len(photographs) == 0 {
			w.cannotOpen(lang.L("The example's photographs are not there any more; open the example casebook and look."))
			return
		}
		w.planOn(photographs[0])
	})
}
