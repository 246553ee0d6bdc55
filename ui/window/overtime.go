package window

import (
	"bytes"
	"context"
	"image"
	"image/jpeg"

	"fyne.io/fyne/v2/lang"

	"ogive/geometry/followup"
	"ogive/geometry/hand"
	"ogive/imaging/casebook"
	"ogive/imaging/casebook/course"
	"ogive/imaging/casebook/readings"
	"ogive/imaging/measure"
	"ogive/ui/appraise"
	"ogive/ui/timeline"
)

// showOverTime shows the webs of a case over time. Photographs that were not
// read before are read now.
func (w *Window) showOverTime(caseID int64) {
	book, settings, turn := w.book, w.settings, w.turn.Add(1)
	w.notices.show(notice{about: aboutOpening, lasting: true, text: lang.L("The case is being read…")})
	w.background(func() func() {
		read, err := readings.In(book, settings)
		var c course.Course
		if err == nil {
			c, err = course.Of(context.Background(), book, read, caseID)
		}
		return func() {
			switch {
			case w.turn.Load() != turn || w.book != book:
			case err != nil:
				w.cannotOpen(plain(err))
			default:
				w.notices.close(aboutOpening)
				w.showCourse(book, c)
			}
		}
	})
}

func (w *Window) showCourse(book *casebook.Casebook, c course.Course) {
	if w.overTime == nil {
		w.overTime = timeline.New(w.win)
		w.overTime.OnLeave = w.showCases
		w.overTime.OnOpen = func(photograph int64) {
			p, err := w.book.Photograph(photograph)
			if err != nil {
				w.cannotOpen(plain(err))
				return
			}
			w.openFromCase(p)
		}
	}
	m := timeline.Model{Code: c.Case.Code, Norms: w.settings.Norms, Thumbnail: thumbnails(book)}
	type place struct {
		side hand.Side
		web  hand.Web
	}
	byWeb := map[place]course.Web{}
	for _, one := range c.Webs {
		m.Webs = append(m.Webs, timeline.Web{Side: one.Side, Web: one.Web, Series: one.Series})
		byWeb[place{one.Side, one.Web}] = one
	}
	m.Appraisal = func(web timeline.Web, p followup.Point) []string {
		return c.Found(byWeb[place{web.Side, web.Web}], p.Photograph)
	}
	w.overTime.Show(m)
	w.stand(w.overTime.Object())
	for _, said := range c.Warnings {
		w.notices.show(notice{about: aboutOpening, text: said})
	}
	for _, item := range c.Unread {
		w.notices.show(notice{about: aboutOpening, text: lang.L("A photograph of {{.Observer}} could not be read: {{.Problem}}.", map[string]any{"Observer": item.Observer, "Problem": plain(item.Err)})})
	}
}

// thumbnails loads the small pictures of a casebook.
func thumbnails(book *casebook.Casebook) func(photograph int64) (image.Image, error) {
	return func(photograph int64) (image.Image, error) {
		p, err := book.Photograph(photograph)
		if err != nil {
			return nil, err
		}
		data, err := book.Thumbnail(p)
		if err != nil {
			return nil, err
		}
		return jpeg.Decode(bytes.NewReader(data))
	}
}

// figuresBeside are what was measured at a sitting, to stand beside what is found
// at it; findings can be written down without. It is called beside the window's
// goroutine.
func figuresBeside(book *casebook.Casebook, settings measure.Settings, c casebook.Case, s casebook.Sitting) map[appraise.Beside]string {
	read, err := readings.In(book, settings)
	if err != nil {
		return nil
	}
	figures, err := appraise.Measured(context.Background(), book, read, c.ID, s.ID, settings.Norms)
	if err != nil {
		return nil
	}
	return figures
}
