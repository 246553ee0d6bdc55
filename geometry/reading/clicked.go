package reading

import (
	"math/rand/v2"

	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

// readClickedCrown tells index and depth of a web without a traced border, such
// as one hidden between fingers, from the crown as it was clicked.
func readClickedCrown(out *Web, m hand.Marks, w hand.WebMarks, fit scale.Fit, table norms.Table) {
	out.warn("The border is not traced: only what follows from the clicked crown is given.")
	if len(w.Seeds) != 3 {
		return
	}
	out.Crown = w.Seeds[1]
	t := trial{fit: fit}
	js := jointsOf(m, w.Web)
	at := func(crown plane.PixelPoint, js joints, m scale.Map) figures {
		var f figures
		f.index, f.depth, f.jointed = js.place(m.Position(crown), m)
		return f
	}
	centre := at(w.Seeds[1], js, fit.Best)
	rng := rand.New(rand.NewPCG(0xc11c, uint64(w.Web)))
	draws := make([]figures, trials)
	for i := range draws {
		crown := w.Seeds[1].Add(clickError(m.ClickSD, rng))
		draws[i] = at(crown, js.missed(m.ClickSD, rng), t.likelyMap(i))
	}
	e := newExpander(centre, draws)
	out.Index, out.Depth = e.index(), e.depth()
	if !centre.jointed {
		out.warn(needsJoints(m.View))
	}
	out.Verdicts = judgeIndex(m.View, *out, table)
	for i := range out.Verdicts {
		out.Verdicts[i].Certain = false // no border confirms the click
	}
}
