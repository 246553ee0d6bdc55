package charting

import (
	"bytes"
	"fmt"
	"io"
	"time"

	"codeberg.org/go-fonts/liberation/liberationsansbold"
	"codeberg.org/go-fonts/liberation/liberationsansregular"
	"codeberg.org/go-pdf/fpdf"
	"gonum.org/v1/plot/vg/draw"
)

// noTime stands where a PDF must state when it was made: the same drawing is to
// give the same bytes.
var noTime = time.Date(2000, time.January, 1, 0, 0, 0, 0, time.UTC)

// face is the family of fonts that a PDF carries.
const face = "chart"

// PDF writes the page as a PDF, on white, whose text can be searched.
func (p Page) PDF(to io.Writer) error { return PDF(to, p) }

// PDF writes several pages, each of its own size.
func PDF(to io.Writer, pages ...Page) error {
	doc := fpdf.NewCustom(&fpdf.InitType{UnitStr: "pt"})
	doc.SetCatalogSort(true)
	doc.SetCreationDate(noTime)
	doc.SetModificationDate(noTime)
	doc.SetProducer("Ogive", false)
	doc.SetMargins(0, 0, 0)
	doc.SetCellMargin(0)
	doc.SetAutoPageBreak(false, 0)
	doc.AddUTF8FontFromBytes(face, "", liberationsansregular.TTF)
	doc.AddUTF8FontFromBytes(face, "B", liberationsansbold.TTF)
	white := Paper
	white.Ground = rgb(0xffffff)
	for _, p := range pages {
		doc.AddPageFormat("P", fpdf.SizeType{Wd: p.Width.Points(), Ht: p.Height.Points()})
		p.Draw(draw.NewCanvas(newSheet(doc, p.Height), p.Width, p.Height), white)
	}
	var out bytes.Buffer
	if err := doc.Output(&out); err != nil {
		return fmt.Errorf("the chart could not be drawn as PDF: %w", err)
	}
	if _, err := to.Write(out.Bytes()); err != nil {
		return fmt.Errorf("the chart could not be written as PDF: %w", err)
	}
	return nil
}
