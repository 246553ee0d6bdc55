package marksfile

import (
	"image"
	"strings"
	"testing"
)

func TestAFileIsCompleteWhenItCanBeMeasured(t *testing.T) {
	for _, name := range []string{ruled, carded, ticked} {
		f, err := Parse([]byte(sample(t, name)))
		if err != nil {
			t.Fatal(err)
		}
		if err := f.Complete(); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestWhatIsStillToBeMarkedIsNamed(t *testing.T) {
	for _, c := range []struct{ name, from, to, says string }{
		{"unfinished.json", "", "", "scale: is missing; mark a ruler, its ticks or a card"},
		{ruled, `"pip": [1002, 905]`, `"dip": [1002, 905]`, "joints.middle.pip: is missing, which the third web needs; mark the PIP joint of the middle finger, or write null"},
		{ruled, `, "ring": {"mcp": [1302, 1421], "pip": [1325, 960]}`, ``, "joints.ring.mcp: is missing"},
		{ruled, `"web": 3, "seeds"`, `"web": 4, "seeds"`, "joints.little.mcp: is missing, which the fourth web needs"},
		{ruled, `"web": 3, "seeds"`, `"web": 1, "seeds"`, "joints.thumb.mcp: is missing, which the first web needs; mark the MCP joint of the thumb"},
		{carded, `"pip": null`, `"dip": null`, "joints.ring.pip: is missing, which the third web needs; mark the PIP crease of the ring finger"},
		{ticked, `{"web": 4, "line": [[500, 300], [540, 345], [585, 385]], "axis": [[300, 250], [800, 260]]}`, ``, "webs: there is nothing to measure; mark a web or a junction"},
		{ruled, `[1812.0, 2204.0]`, `[310.0, 2210.5]`, "scale.ruler: "},
		{carded, `[[100, 100], [956, 120], [940, 660], [90, 640]]`, `[[100, 100], [500, 100], [900, 100], [90, 640]]`, "scale.card: corners 1, 2 and 3 lie on one line"},
		{carded, `[[100, 100], [956, 120], [940, 660], [90, 640]]`, `[[100, 100], [940, 660], [956, 120], [90, 640]]`, "scale.card: the sides cross"},
		{ticked, `[320, 902]`, `[260, 901]`, "scale.ticks: "},
	} {
		f, err := Parse([]byte(strings.Replace(sample(t, c.name), c.from, c.to, 1)))
		if err != nil {
			t.Errorf("%s with %s: %v", c.name, c.to, err)
			continue
		}
		if err := f.Complete(); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s with %s: %v\nwant %q", c.name, c.to, err, c.says)
		}
	}
}

func TestMarksOutsideThePhotographAreNamed(t *testing.T) {
	for _, c := range []struct {
		name string
		size image.Point
		says string
	}{
		{ruled, image.Pt(2000, 2200), "scale.ruler[0]: [310, 2210.5] lies outside the photograph, which is 2000 x 2200 pixels"},
		{ruled, image.Pt(1811, 2300), "scale.ruler[1]: "},
		{carded, image.Pt(1500, 1500), "joints.index.pip: [1510, 900] lies outside"},
		{carded, image.Pt(1600, 660), "joints.index.mcp: "},
		{ticked, image.Pt(790, 1000), "junctions[0].axis[1]: [800, 260]"},
	} {
		f, err := Parse([]byte(sample(t, c.name)))
		if err != nil {
			t.Fatal(err)
		}
		if err := f.CheckWithin(c.size); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s in %v: %v\nwant %q", c.name, c.size, err, c.says)
		}
	}
	f, err := Parse([]byte(sample(t, ruled)))
	if err != nil {
		t.Fatal(err)
	}
	if err := f.CheckWithin(image.Pt(1812, 2211)); err != nil {
		t.Errorf("marks up to the very border: %v", err)
	}
}
