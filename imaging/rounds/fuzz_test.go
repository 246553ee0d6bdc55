package rounds

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// Whatever the text: it is refused in one line, or it comes back the same from what
// is saved, and its summary can be made.
func FuzzParse(f *testing.F) {
	const small = `{"ogive_round":1,"id":"20260301-120000","observer":"AB","begun":"2026-03-01T12:00:00Z",` +
		`"setup":{"kind":"by eye","count":2,"difficulty":"usual","faults":["too deep"],"seed":7},` +
		`"limits":{"index":[0.45,0.67],"slope_deg":[35,50],"span_least_mm":1,"span_fraction":0.1,"against":"published values"},` +
		`"order":[1,0],"results":[{"picture":1,"at":"2026-03-01T12:01:00Z","web":3,"judged":[{"of":"crown","web":3,"given":"too deep",` +
		`"true":"within limits","counted":true,"off":{"distal_mm":-1.5,"ulnar_mm":0.2}}],` +
		`"landmarks":[{"kind":"MCP","of":"ring","distal_mm":1,"ulnar_mm":2,"distal_px":3,"ulnar_px":4,"phalanx_px":100}],` +
		`"figures":[{"figure":"index","web":3,"got":0.4,"true":0.5}],"exact":true,"longer_px":1200}]}`
	for _, c := range [][2]string{
		{``, ``}, {`by eye`, `blind`}, {`"count":2`, `"count":-2`}, {`[1,0]`, `[1,1]`}, {`-1.5`, `1e400`}, {`-1.5`, `1e300`}, {`"picture":1`, `"picture":0`},
		{`0.45`, `0.7`}, {`2026-03-01T12:00`, `0000-00-00T12:00`}, {`"web":3`, `"web":9`}, {`:7}`, `:7,"photographs":[{"key":"4","observer":"CD"},{"key":"5","observer":"CD"}]}`},
		{`"results":[`, `"results":[null,`}, {`"phalanx_px":100`, `"phalanx_px":0`}, {`2026-03-01T12:01:00Z`, `2026-03-01T12:01:00+14:00`},
	} {
		f.Add([]byte(strings.Replace(small, c[0], c[1], 1)))
	}
	f.Add([]byte(strings.Repeat("[", 100)))
	f.Fuzz(func(t *testing.T, data []byte) {
		r, err := Parse(data)
		if err != nil {
			if strings.ContainsAny(err.Error(), "\n\r") {
				t.Errorf("%q is refused with %q", data, err)
			}
			return
		}
		saved, err := r.Encode()
		if err != nil {
			t.Fatalf("%q is read but not written: %v", data, err)
		}
		again, err := Parse(saved)
		if err != nil {
			t.Fatalf("%s is written but not read: %v", saved, err)
		}
		if d := cmp.Diff(r, again, kept); d != "" {
			t.Errorf("%q comes back changed: %s", data, d)
		}
		r.Summary()
		Curve([]*Round{r}, r.Observer, r.Setup.Kind)
		Repeatability([]*Round{r}, r.Observer)
	})
}
