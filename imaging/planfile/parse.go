package planfile

import (
	"fmt"
	"strconv"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/photo"
)

// Limits of what a file holds, beyond any plan.
const (
	longestPath  = 4096
	longestName  = 100
	longestText  = 8000
	mostAlike    = 30 // alternatives, and donors and patches and findings
	mostOutline  = 500
	mostZigzag   = 100
	mostGirth    = 200
	mostWidth    = 60
	mostSkin     = 1000
	leastOutline = 3
)

// Parse reads the text of a plan file. The error is a *marksfile.Refusal, which
// names the field and the mend.
func Parse(data []byte) (File, error) {
	root, err := decode(data)
	if err != nil {
		return File{}, err
	}
	f := field{root, "", true, &err}.file()
	if err != nil {
		return File{}, err
	}
	return f, nil
}

func (f field) file() File {
	f.checkVersion()
	f.object("a plan file", "ogive_plan", "photograph", "marks", "other", "hand", "view", "webs", "donors", "patches", "family")
	out := File{
		Photograph: f.at("photograph").words("the photograph's file name", 1, longestPath),
		Marks:      f.at("marks").words("the marks file's name", 0, longestPath),
		Other:      f.at("other").words("the name of the other hand's marks file", 0, longestPath),
		Side:       named(f.at("hand"), `"left" or "right"`, hand.ParseSide),
		View:       f.at("view").view(),
	}
	taken := map[hand.Web]bool{}
	for _, e := range f.at("webs").maybe("a list of webs", len(hand.Webs)) {
		out.Webs = append(out.Webs, e.web(taken))
	}
	for _, e := range f.at("donors").maybe("a list of donor sites", mostAlike) {
		out.Donors = append(out.Donors, e.donor())
	}
	for _, e := range f.at("patches").maybe("a list of patches of skin", mostAlike) {
		out.Patches = append(out.Patches, e.patch())
	}
	if family := f.at("family"); family.there {
		out.Family = family.family()
	}
	return out
}

// checkVersion comes first: a file of a later form is not to be blamed for
// fields that are unknown here.
func (f field) checkVersion() {
	if _, ok := f.value.(members); !ok {
		f.wrong(`a plan file, an object that begins with "ogive_plan": 1`)
		return
	}
	v := f.at("ogive_plan")
	if !v.there {
		v.refuse("is missing, so this is not a plan file", `give a plan file, or add "ogive_plan": 1`)
		return
	}
	switch n := v.number("the number 1", 1, 1e6); {
	case !f.sound() || n == Version:
	case n > Version:
		v.refuse("is "+strconv.FormatFloat(n, 'g', -1, 64)+": the file was written by a later program than this one", "use the later program")
	}
}

func (f field) view() hand.View {
	const form = `"dorsal" or "palmar"`
	v := named(f, form, hand.ParseView)
	if v == hand.WebView {
		f.refuse("is the web view, in which nothing is planned", "give "+form)
	}
	return v
}

func (f field) web(taken map[hand.Web]bool) Web {
	f.object("the plan of a web", "web", "chosen", "join", "girths", "alternatives")
	w := Web{Web: f.at("web").webNumber(taken), Chosen: f.at("chosen").words("the name of an alternative", 0, longestName)}
	if join := f.at("join"); join.there {
		if ends := join.points("the proximal and the distal end of the join", 2, 2); len(ends) == 2 {
			w.Join = &[2]plane.PixelPoint{ends[0], ends[1]}
		}
	}
	if girths := f.at("girths"); girths.there {
		girths.object("the girths of both digits", "radial", "ulnar")
		w.Girths = &Girths{Radial: girths.at("radial").girth(), Ulnar: girths.at("ulnar").girth()}
	}
	names := map[string]bool{}
	for _, e := range f.at("alternatives").maybe("a list of alternatives", mostAlike) {
		a := e.alternative()
		if names[a.Name] {
			e.at("name").refuse(fmt.Sprintf("%q is there twice", a.Name), "give every alternative a name of its own")
		}
		names[a.Name] = true
		w.Alternatives = append(w.Alternatives, a)
	}
	if f.sound() && w.Chosen != "" && !names[w.Chosen] {
		f.at("chosen").refuse(fmt.Sprintf("%q is none of the alternatives", w.Chosen), "give the name of one of them, or leave it out")
	}
	return w
}

func (f field) webNumber(taken map[hand.Web]bool) hand.Web {
	n := f.number("the number of a web, 1 (thumb-index) to 4 (ring-little)", 1, 4)
	w := hand.Web(n)
	switch {
	case !f.sound():
	case float64(w) != n:
		f.refuse(fmt.Sprintf("%g is no web", n), "give a whole number from 1 to 4")
	case taken[w]:
		f.refuse(fmt.Sprintf("the %v is there twice", w), "keep one of them")
	}
	taken[w] = true
	return w
}

func (f field) girth() Girth {
	if !f.there {
		return Girth{}
	}
	f.object(`a girth, such as {"taped_mm": 48} or {"width_mm": 15}`, "taped_mm", "width_mm")
	g := Girth{
		Taped: plane.Millimetre(f.at("taped_mm").positive("the taped girth in millimetres", mostGirth)),
		Width: plane.Millimetre(f.at("width_mm").positive("the width in millimetres", mostWidth)),
	}
	if f.sound() && g.Taped > 0 && g.Width > 0 {
		f.refuse("has both a taped girth and a width", "keep the taped girth, which is surer")
	}
	return g
}

func (f field) donor() Donor {
	f.object("a donor site", "name", "gave_cm2", "drawbacks")
	return Donor{
		Name:      f.at("name").words("the site's name", 1, longestName),
		Gave:      f.at("gave_cm2").positive("how much skin it gave in square centimetres", mostSkin),
		Drawbacks: f.at("drawbacks").words("its drawbacks", 0, longestText),
	}
}

func (f field) patch() Patch {
	f.object("a patch of skin", "name", "at", "radius_px", "photograph")
	p := Patch{
		Name:       f.at("name").words("what is sampled", 1, longestName),
		Centre:     f.at("at").point(),
		Radius:     plane.Pixel(f.at("radius_px").number("the patch's radius in pixels", 0, photo.MaxSide)),
		Photograph: f.at("photograph").words("the name of another photograph", 0, longestPath),
	}
	if f.sound() && p.Radius == 0 {
		f.at("radius_px").refuse("is 0", "give the patch a radius")
	}
	return p
}

func (f field) family() Family {
	f.object("what the family is to be told", "findings", "texts")
	var out Family
	seen := map[string]bool{}
	for _, e := range f.at("findings").maybe("a list of findings", mostAlike) {
		key := e.words("the key of a finding", 1, longestName)
		if seen[key] {
			e.refuse("is there twice", "keep one of them")
		}
		seen[key] = true
		out.Findings = append(out.Findings, key)
	}
	texts := map[string]bool{}
	for _, e := range f.at("texts").maybe("a list of texts", mostAlike) {
		e.object("a text in the user's own words", "key", "text")
		t := Text{Key: e.at("key").words("the key of the point", 1, longestName), Text: e.at("text").words("the text", 0, longestText)}
		if texts[t.Key] {
			e.at("key").refuse("is there twice", "keep one of them")
		}
		texts[t.Key] = true
		out.Texts = append(out.Texts, t)
	}
	return out
}
