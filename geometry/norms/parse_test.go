package norms_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"ogive/assets"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
)

func shippedTable(t *testing.T) norms.Table {
	t.Helper()
	table, err := norms.Parse(assets.NormalValues)
	if err != nil {
		t.Fatalf("the shipped table does not parse: %v", err)
	}
	return table
}

func TestEveryShippedRowSaysWhatItsSourceSays(t *testing.T) {
	const (
		bae      = "Bae DS, Release of simple syndactyly (operative chapter)"
		kozin    = "Kozin SH. Syndactyly. J Am Soc Surg Hand 2001;1:1-13"
		practice = "common practice, no source"
	)
	want := []struct{ figure, value, source string }{
		{"distal edge of web, dorsal", "about the middle of the proximal phalanx", bae},
		{"distal edge of web, dorsal", "about two thirds of the proximal phalanx", kozin},
		{"slope, dorsal to palmar", "45 degrees", bae},
		{"slope, dorsal to palmar", "45 to 50 degrees", kozin},
		{"slope, dorsal to palmar", "about 40 degrees", practice},
		{"shape", "second and fourth U, third V", bae},
		{"shape", "somewhat gothic", practice},
		{"third web", "narrowest and most distal of second to fourth", practice},
		{"abduction between fingers", "at least 35 degrees", kozin},
		{
			"creep grade",
			"0 soft, as normal; 1 no advance, thickened; 2 to one third, 3 to two thirds, 4 to all of the distance from web base to PIP crease",
			"Withey SJ et al. J Hand Surg Br 2001;26:4-7 (thirds: from memory)",
		},
		{
			"colour difference on hand skin seen / accepted (CIELAB)", "0.8 / 1.8 fair, 1.3 / 2.6 dark",
			"Leow MEL, Ow RKK, Lee MH, Chan YH, Pho RWH. Prosthet Orthot Int 2006;30 (hand and digit prostheses, 90 assessors)",
		},
		{
			"slope of a rebuilt web", "45 degrees, hourglass",
			"hourglass dorsal flap series, J Hand Surg Am 2015 (abstract, 116 syndactylies)",
		},
		{"dorsal flap length", "two thirds of MCP to PIP, base a little proximal to the MCP joint", practice},
	}
	rows := shippedTable(t).Rows
	if len(rows) != len(want) {
		t.Fatalf("the table has %d rows, want %d", len(rows), len(want))
	}
	for i, w := range want {
		r := rows[i]
		if r.Figure != w.figure || r.Value != w.value || r.Source != w.source {
			t.Errorf("row %d is %q, %q, %q; want %q, %q, %q", i+1, r.Figure, r.Value, r.Source, w.figure, w.value, w.source)
		}
		if r.Source == practice && r.Trust != practice {
			t.Errorf("row %d has no source but is trusted as %q", i+1, r.Trust)
		}
	}
}

func TestBandsAreReadOutOfRowsThatDifferAndSaySo(t *testing.T) {
	table := shippedTable(t)
	for _, c := range []struct {
		figure    string
		view      hand.View
		low, high float64
	}{{"index", hand.Dorsal, 0.45, 0.67}, {"slope", hand.WebView, 35, 50}} {
		b, ok := table.Band(c.figure, c.view)
		if !ok || b.Low != c.low || b.High != c.high {
			t.Errorf("band for the %s is %+v, want %g to %g", c.figure, b, c.low, c.high)
		}
		if !strings.Contains(b.Reason, "The sources differ") {
			t.Errorf("the band for the %s hides that the sources differ: %q", c.figure, b.Reason)
		}
		for _, id := range b.Rows {
			r, _ := table.Row(id)
			for _, n := range r.Numbers {
				if n.Low < b.Low || n.High > b.High {
					t.Errorf("row %q, %g to %g, lies outside the band for the %s", id, n.Low, n.High, c.figure)
				}
			}
		}
	}
	if _, ok := table.Band("index", hand.Palmar); ok {
		t.Error("there is a band for the palmar index, on which the table has no value")
	}
}

func TestAnOpenSideIsInfinite(t *testing.T) {
	r, ok := shippedTable(t).Row("abduction")
	if !ok || len(r.Numbers) != 1 || r.Numbers[0].Low != 35 || !math.IsInf(r.Numbers[0].High, 1) {
		t.Errorf("at least 35 degrees reads as %+v", r.Numbers)
	}
}

func TestARowKeepsItsWebsAndView(t *testing.T) {
	r, _ := shippedTable(t).Row("shape-u-v-u")
	if !slices.Equal(r.Webs, []hand.Web{2, 3, 4}) || r.View != 0 {
		t.Errorf("shape applies to webs %v in view %v, want second to fourth in any", r.Webs, r.View)
	}
	if r, _ = shippedTable(t).Row("slope-45"); r.View != hand.WebView {
		t.Errorf("slope applies to view %v, want web", r.View)
	}
}

func TestARefusalNamesTheRowAndTheMend(t *testing.T) {
	const (
		row  = `{"id": "a", "figure": "f", "view": "any", "value": "v", "source": "s", "trust": "t"}`
		band = `{"figure": "index", "view": "dorsal", "low": 0.4, "high": 0.6, "against": "x", "rows": ["a"], "reason": "r"}`
		span = `{"tolerance_mm": 1, "tolerance_fraction": 0.1, "reason": "r"}`
	)
	table := func(rows, bands, span string) string {
		return `{"ogive": 1, "rows": [` + rows + `], "bands": [` + bands + `], "span": ` + span + `}`
	}
	edit := func(s, old, new string) string {
		if !strings.Contains(s, old) {
			t.Fatalf("%q does not hold %q", s, old)
		}
		return strings.Replace(s, old, new, 1)
	}
	if _, err := norms.Parse([]byte(table(row, band, span))); err != nil {
		t.Fatalf("the sound table is refused: %v", err)
	}
	for name, c := range map[string]struct {
		data string
		says []string
	}{
		"cut short":         {table(row, band, span)[:40], []string{"cut short", "whole copy"}},
		"empty":             {"", []string{"cut short"}},
		"not JSON":          {"low = 0.4", []string{"correct it"}},
		"trailing text":     {table(row, band, span) + "{}", []string{"follows", "remove it"}},
		"another version":   {`{"ogive": 2}`, []string{`"ogive" is 2`, "set it to 1"}},
		"unknown top field": {`{"ogive": 1, "row": []}`, []string{`"row"`}},
		"unknown row field": {table(edit(row, `"value"`, `"worth"`), band, span), []string{`row 1 ("a")`, `"worth"`}},
		"no source":         {table(edit(row, `"s"`, `" "`), band, span), []string{`row 1 ("a")`, `"source" is missing`, "common practice, no source"}},
		"no trust":          {table(edit(row, `"t"`, `""`), band, span), []string{`row 1 ("a")`, `"trust" is missing`}},
		"no id":             {table(edit(row, `"a"`, `""`), band, span), []string{"row 1:", `"id" is missing`}},
		"same id twice":     {table(row+","+row, band, span), []string{`row 2 ("a")`, "same id"}},
		"unknown view":      {table(edit(row, "any", "lateral"), band, span), []string{`row 1 ("a")`, `"lateral"`, "dorsal, palmar, web", `"any"`}},
		"fifth web":         {table(edit(row, `"view"`, `"webs": [5], "view"`), band, span), []string{`row 1 ("a")`, "holds 5", "1 (thumb-index) to 4"}},
		"text for a number": {table(edit(row, `"view"`, `"webs": ["third"], "view"`), band, span), []string{`row 1 ("a")`, "webs", "string"}},
		"number of nothing": {table(edit(row, `"view"`, `"numbers": [{"of": "x", "unit": "mm"}], "view"`), band, span), []string{`row 1 ("a")`, "neither", "at least one"}},
		"low above high":    {table(edit(row, `"view"`, `"numbers": [{"of": "x", "unit": "mm", "low": 2, "high": 1}], "view"`), band, span), []string{`row 1 ("a")`, "low 2 above high 1"}},
		"band of no row":    {table(row, edit(band, `["a"]`, `["b"]`), span), []string{"band 1", `"b"`, "add the row"}},
		"band upside down":  {table(row, edit(band, "0.4", "0.7"), span), []string{"band 1", "0.7 not below high 0.6"}},
		"band half open":    {table(row, edit(band, `"low": 0.4, `, ""), span), []string{"band 1", `both "low" and "high"`}},
		"band for a colour": {table(row, edit(band, `"index"`, `"colour"`), span), []string{"band 1", `"colour"`}},
		"band twice":        {table(row, band+","+band, span), []string{"band 2", "already"}},
		"negative tolerance": {
			table(row, band, edit(span, ": 1,", ": -1,")), []string{"span", `"tolerance_mm"`, "0 or more"},
		},
		"tolerance in per cent": {table(row, band, edit(span, "0.1", "10")), []string{"span", "below 1"}},
		"no span":               {`{"ogive": 1, "rows": [], "bands": []}`, []string{"span", "tolerance_mm"}},
	} {
		_, err := norms.Parse([]byte(c.data))
		if err == nil {
			t.Errorf("%s: accepted", name)
			continue
		}
		for _, s := range c.says {
			if !strings.Contains(err.Error(), s) {
				t.Errorf("%s: error %q does not say %q", name, err, s)
			}
		}
	}
}

func FuzzParseNeverPanicsAndKeepsItsPromises(f *testing.F) {
	f.Add(assets.NormalValues)
	f.Add(assets.NormalValues[:len(assets.NormalValues)/2])
	f.Fuzz(func(t *testing.T, data []byte) {
		table, err := norms.Parse(data)
		if err != nil {
			return
		}
		for _, r := range table.Rows {
			if r.Source == "" || r.Trust == "" {
				t.Errorf("row %q passed without source or trust", r.ID)
			}
		}
		for _, b := range table.Bands {
			if !(b.Low < b.High) {
				t.Errorf("a band from %g to %g passed", b.Low, b.High)
			}
		}
	})
}
