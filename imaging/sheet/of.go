package sheet

import (
	"fmt"
	"slices"

	"ogive/geometry/skincolour"
	"ogive/imaging/family"
	"ogive/imaging/photo"
	"ogive/imaging/planning"
	"ogive/imaging/skin"
	"ogive/imaging/wording"
)

// Words is what a sheet says beside the plan.
type Words struct {
	// Code is the case's code, never a name.
	Code string
	// Colours are the skin samples, and ColourRemarks what could not be sampled.
	Colours       []skin.Sample
	ColourRemarks []string
}

// Of is the sheet of a plan on the hand and the photograph it was drawn on. Of a
// web without a chosen alternative all are shown, and a note says so.
func Of(p planning.Plan, here planning.Hand, photograph *photo.Photograph, words Words) Content {
	c := Content{
		Code: words.Code, Title: wording.Photograph(p.Side, p.View), Caution: wording.Caution,
		Scale: trust(p), Notes: slices.Clone(p.Warnings),
	}
	g := gatherer{content: &c, plan: p, here: here}
	for _, w := range p.Webs {
		g.web(w)
	}
	g.donors()
	g.colours(words)
	g.sources()
	if photograph != nil {
		c.Photograph = marked(photograph, p, here)
		c.Key = g.keyOfPhotograph()
	}
	c.Family = toldFamily(p)
	return c
}

// gatherer fills a content from a plan.
type gatherer struct {
	content *Content
	plan    planning.Plan
	here    planning.Hand
}

// trust says how far the scale of the photograph is to be trusted.
func trust(p planning.Plan) string {
	if p.PerPixel.Value <= 0 {
		return ""
	}
	const length = 20.0
	e := p.PerPixel
	e.U95, e.Value = length*e.U95/e.Value, length
	return "By the scale of the photograph 20 mm here are " + wording.Millimetres(e) + " on the hand (95 %)."
}

// shown are the alternatives of a web that are on the sheet.
func (g *gatherer) shown(w planning.Web) []planning.Alternative {
	if w.Chosen >= 0 {
		return w.Alternatives[w.Chosen : w.Chosen+1]
	}
	if len(w.Alternatives) > 1 {
		g.note(fmt.Sprintf("No alternative is chosen for the %v yet: all %d are shown.", w.Web, len(w.Alternatives)))
	}
	return w.Alternatives
}

func (g *gatherer) web(w planning.Web) {
	g.note(w.Remarks...)
	if w.ThirdsRule != "" {
		g.note(fmt.Sprintf("%s: the thirds rule for the flap is not used. %s", wording.WebName(w.Web), wording.Sentence(w.ThirdsRule)))
	}
	for _, a := range g.shown(w) {
		title := wording.WebName(w.Web)
		if a.Name != "" {
			title += ", " + a.Name
		}
		g.pieces(title, w, a)
		g.figures(title, w, a)
	}
	if w.Skin != nil {
		g.skin(w)
	}
}

// note adds notes that are not there yet.
func (g *gatherer) note(notes ...string) {
	for _, n := range notes {
		if n != "" && !slices.Contains(g.content.Notes, n) {
			g.content.Notes = append(g.content.Notes, n)
		}
	}
}

func (g *gatherer) source(sources ...string) {
	for _, s := range sources {
		if s != "" && !slices.Contains(g.content.Sources, s) {
			g.content.Sources = append(g.content.Sources, s)
		}
	}
}

func (g *gatherer) donors() {
	t := Table{Title: "Donor sites, from the surgeon's own list"}
	for _, d := range g.plan.File.Donors {
		row := Row{Name: d.Name, Note: d.Drawbacks}
		if d.Gave > 0 {
			row.Value = fmt.Sprintf("gave %.3g cm²", d.Gave)
		}
		t.Rows = append(t.Rows, row)
	}
	if len(t.Rows) > 0 {
		g.content.Tables = append(g.content.Tables, t)
	}
}

func (g *gatherer) colours(words Words) {
	g.note(words.ColourRemarks...)
	if len(words.Colours) == 0 {
		return
	}
	limits, err := skincolour.LimitsOf(g.here.Table)
	if err != nil {
		g.note("Skin colour is not judged: " + err.Error() + ".")
		return
	}
	lines, notes := skin.Tell(words.Colours, limits)
	t := Table{Title: "Skin colour"}
	for _, l := range lines {
		t.Rows = append(t.Rows, Row{Name: l.Name, Value: l.Value, Note: l.Note, Swatches: l.Swatches})
	}
	g.content.Tables = append(g.content.Tables, t)
	g.note(notes...)
	g.source("Colour difference CIEDE2000: Sharma G, Wu W, Dalal EN. Color Res Appl 2005;30:21-30",
		"Individual typology angle: Chardon A, Cretois I, Hourseau C. Int J Cosmet Sci 1991;13:191-208 (from memory)",
		"Colour differences seen and accepted: "+limits.Source)
}

// toldFamily is the family's page; there is none where nothing was ticked or
// written for it.
func toldFamily(p planning.Plan) []family.Point {
	f := p.File.Family
	if len(f.Findings)+len(f.Texts) == 0 {
		return nil
	}
	own := map[string]string{}
	for _, t := range f.Texts {
		own[t.Key] = t.Text
	}
	return family.Points(f.Findings, own)
}
