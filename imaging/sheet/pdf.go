package sheet

import (
	"bytes"
	"fmt"
	"time"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goitalic"
	"golang.org/x/image/font/gofont/goregular"
)

// noTime stands where a PDF must state when it was made: the same content is to
// give the same bytes.
var noTime = time.Date(2000, time.January, 1, 0, 0, 0, 0, time.UTC)

// PDF is the sheet as a PDF file: first the marked photograph with its main
// figures, then the outlines at true size, all figures with notes and sources,
// and last the family's page. It fails on a piece that no hand has.
func (c Content) PDF(paper Paper) ([]byte, error) {
	if err := c.check(); err != nil {
		return nil, err
	}
	w := newWriter(c, paper)
	w.photographPage()
	w.outlinePages()
	w.figurePages()
	w.familyPages()
	var out bytes.Buffer
	if err := w.pdf.Output(&out); err != nil {
		return nil, fmt.Errorf("the sheet can't be made: %w", err)
	}
	return out.Bytes(), nil
}

// face is the family of fonts that a sheet carries.
const face = "sheet"

func newWriter(c Content, paper Paper) *writer {
	pdf := fpdf.New("P", "mm", paper.name(), "")
	pdf.SetCatalogSort(true)
	pdf.SetCreationDate(noTime)
	pdf.SetModificationDate(noTime)
	pdf.SetProducer("Ogive", false)
	pdf.SetTitle("Plan", false)
	pdf.SetMargins(margin, margin, margin)
	pdf.SetCellMargin(0)
	pdf.SetAutoPageBreak(false, 0)
	pdf.AliasNbPages(pageCount)
	pdf.AddUTF8FontFromBytes(face, "", goregular.TTF)
	pdf.AddUTF8FontFromBytes(face, "B", gobold.TTF)
	pdf.AddUTF8FontFromBytes(face, "I", goitalic.TTF)
	w := &writer{pdf: pdf, content: c, paper: paper, field: paper.field()}
	w.y = w.field.top
	return w
}

// pageCount is a sequence that no text holds; the number of pages takes its
// place.
const pageCount = "{pages}"
