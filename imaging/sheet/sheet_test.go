package sheet

import (
	"bytes"
	"encoding/xml"
	"image"
	"io"
	"math"
	"strings"
	"testing"
	"unicode"

	"ogive/geometry/plane"
)

func TestTheSameContentGivesTheSameBytes(t *testing.T) {
	for range 3 {
		if !bytes.Equal(made(t, example(), A4), made(t, example(), A4)) {
			t.Fatal("two sheets of the same content differ")
		}
	}
	if !bytes.Equal(cut(t, example()), cut(t, example())) {
		t.Fatal("two drawings of the same content differ")
	}
}

func TestThePDFStatesNeitherTimeNorUser(t *testing.T) {
	pdf := made(t, example(), Letter)
	for _, want := range []string{"/CreationDate (D:20000101000000)", "/ModDate (D:20000101000000)", "/Producer (Ogive)"} {
		if !bytes.Contains(pdf, []byte(want)) {
			t.Errorf("the PDF does not hold %s", want)
		}
	}
	for _, never := range []string{"/Author", "/Creator ", "Exif"} {
		if bytes.Contains(pdf, []byte(never)) {
			t.Errorf("the PDF holds %s", never)
		}
	}
}

func TestTheSVGIsSoundAndHoldsALayerForEachKind(t *testing.T) {
	c := example()
	c.Code = `<H&"07>`
	svg := cut(t, c)
	ids := map[string]int{}
	for d := xml.NewDecoder(bytes.NewReader(svg)); ; {
		token, err := d.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		if start, ok := token.(xml.StartElement); ok && start.Name.Local == "g" {
			ids[start.Attr[0].Value]++
		}
	}
	for _, id := range []string{"arch", "flap", "zigzag-dorsal", "zigzag-palmar", "graft", "base", "check", "words"} {
		if ids[id] != 1 {
			t.Errorf("there are %d layers %q, want 1", ids[id], id)
		}
	}
	if !strings.Contains(string(svg), `<svg xmlns="http://www.w3.org/2000/svg" width="`) || ids["join"] != 0 {
		t.Errorf("the drawing begins with %.200s", svg)
	}
}

func TestWhatTheFontLacksIsMarkedAndNothingBreaksThePage(t *testing.T) {
	if got := plain("9.0 ± 0.4 mm², ≤ 3°, –\tα\x00\u200b漢"); got != "9.0 ± 0.4 mm², ≤ 3°, – α?" {
		t.Errorf("%q", got)
	}
	c := example()
	c.Code = "H\n07 漢字"
	long := strings.Repeat("Note that goes on ", 400) + strings.Repeat("x", 900)
	c.Notes = []string{long, "a\nb\n\nc", ""}
	c.Family[0].Text = strings.Repeat("Words. ", 2000)
	c.Tables = append(c.Tables, Table{"Long", []Row{{Name: long[:600], Value: long[:300], Note: long[:900]}}})
	c.Caution = ""
	made(t, c, Letter)
}

func TestASheetOfNothingIsStillASheet(t *testing.T) {
	if pdf := made(t, Content{}, A4); !bytes.HasPrefix(pdf, []byte("%PDF-")) {
		t.Errorf("begins with %.20q", pdf)
	}
	if svg := cut(t, Content{}); !bytes.Contains(svg, []byte("</svg>")) {
		t.Errorf("the drawing is %s", svg)
	}
	c := Content{Photograph: image.NewRGBA(image.Rectangle{})}
	if _, err := c.PDF(A4); err == nil {
		t.Error("an empty photograph is printed")
	}
}

func TestPiecesLieInTheWindowAndApart(t *testing.T) {
	for _, paper := range []Paper{A4, Letter} {
		window := paper.window()
		var pieces []Piece
		for range 7 {
			pieces = append(pieces, examplePieces()...)
		}
		count := 0
		for _, page := range pack(pieces, window, newWriter(Content{}, paper).wordsHeight) {
			for i, p := range page {
				count++
				if p.cell.left < window.left || p.cell.right > window.right+1e-9 || p.cell.top < window.top || p.cell.bottom > window.bottom+1e-9 {
					t.Errorf("%s: %s lies at %v, beyond %v", paper.name(), p.piece.Name, p.cell, window)
				}
				for _, q := range page[:i] {
					if p.cell.left < q.cell.right && q.cell.left < p.cell.right && p.cell.top < q.cell.bottom && q.cell.top < p.cell.bottom {
						t.Errorf("%s: %s and %s lie on each other", paper.name(), p.piece.Name, q.piece.Name)
					}
				}
			}
		}
		if count != len(pieces) {
			t.Errorf("%s: %d pieces placed, want %d", paper.name(), count, len(pieces))
		}
	}
}

func TestKindsAreToldApartWithoutColour(t *testing.T) {
	seen := map[string]Kind{}
	for _, k := range kinds {
		s := k.style()
		look := strings.Map(func(r rune) rune {
			if unicode.IsSpace(r) {
				return -1
			}
			return r
		}, strings.Join([]string{mm(s.width), dashes(s.dash)}, ";"))
		if other, there := seen[look]; there {
			t.Errorf("%v looks like %v", k, other)
		}
		seen[look] = k
	}
}

func dashes(list []float64) string {
	var out []string
	for _, d := range list {
		out = append(out, mm(d))
	}
	return strings.Join(out, ",")
}

func TestNamesOfJointsStandOnTheOuterSides(t *testing.T) {
	p := examplePieces()[0]
	for _, l := range p.Landmarks {
		if got, want := p.namedLeft(l), strings.HasPrefix(l.Name, "middle"); got != want {
			t.Errorf("%s is named on the left: %v, want %v", l.Name, got, want)
		}
	}
	slanted := Piece{Landmarks: []Landmark{{"little MCP", at(10, 40)}, {"ring MCP", at(22, 35)}, {"little PIP", at(-12, 12)}}}
	if !slanted.namedLeft(slanted.Landmarks[0]) || slanted.namedLeft(slanted.Landmarks[1]) {
		t.Error("names of a slanted web stand on its lines")
	}
}

func TestAPieceThatNoHandHasIsRefused(t *testing.T) {
	for _, far := range []plane.Position{at(5000, 0), at(math.NaN(), 0), at(0, math.Inf(1))} {
		c := Content{Pieces: []Piece{{Name: "Third web: arch", Outlines: []Outline{{Kind: ArchLine, Points: []plane.Position{at(0, 0), far}}}}}}
		_, err := c.PDF(A4)
		_, errSVG := c.SVG()
		if err == nil || errSVG == nil || !strings.HasPrefix(err.Error(), "Third web: arch: ") || !strings.Contains(err.Error(), "scale") {
			t.Errorf("%v: errors %v, %v", far, err, errSVG)
		}
	}
}
