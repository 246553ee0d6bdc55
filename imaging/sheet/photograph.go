package sheet

import (
	"bytes"
	"errors"
	"image"
	"image/jpeg"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/draw"
)

const (
	// mostPhotograph is the part of the page's height that the photograph takes.
	mostPhotograph = 0.56
	// finest is how many pixels to a millimetre a photograph is printed with.
	finest = 9.0
)

// photographPage is the marked photograph with the main figures below it.
func (w *writer) photographPage() {
	w.newPage("Plan for theatre")
	if w.content.Photograph != nil {
		w.photograph()
	}
	w.key(w.content.Key, w.field.left)
	for _, t := range w.content.Main {
		w.y += 1.5
		w.table(t)
	}
	w.signature()
}

// photograph lays the photograph in the middle, as large as it may be.
func (w *writer) photograph() {
	size := w.content.Photograph.Bounds().Size()
	if size.X == 0 || size.Y == 0 {
		w.pdf.SetError(errors.New("the photograph is empty"))
		return
	}
	width, height := w.field.width(), w.field.height()*mostPhotograph
	scale := min(width/float64(size.X), height/float64(size.Y))
	width, height = scale*float64(size.X), scale*float64(size.Y)
	data, err := printable(w.content.Photograph, width)
	if err != nil {
		w.pdf.SetError(err)
		return
	}
	options := fpdf.ImageOptions{ImageType: "JPG"}
	w.pdf.RegisterImageOptionsReader("photograph", options, bytes.NewReader(data))
	w.pdf.ImageOptions("photograph", w.field.left+(w.field.width()-width)/2, w.y, width, height, false, options, 0, "")
	w.y += height + 3
}

// printable is the photograph as a JPEG no finer than print can show. It is
// written anew, so that nothing of the camera's data is in it.
func printable(img image.Image, width float64) ([]byte, error) {
	from := img.Bounds()
	if most := int(width * finest); from.Dx() > most {
		smaller := image.NewRGBA(image.Rect(0, 0, most, max(1, from.Dy()*most/from.Dx())))
		draw.CatmullRom.Scale(smaller, smaller.Rect, img, from, draw.Src, nil)
		img = smaller
	}
	var out bytes.Buffer
	err := jpeg.Encode(&out, img, &jpeg.Options{Quality: 88})
	return out.Bytes(), err
}

// signature is where whoever measured again signs.
func (w *writer) signature() {
	w.need(12)
	w.y = max(w.y+4, w.field.bottom-8)
	w.set("", textSize, ink)
	w.at(w.field.left, w.y, "Measured again on the patient by")
	w.at(w.field.left+116, w.y, "on")
	w.pdf.SetDashPattern(nil, 0)
	w.pdf.SetLineWidth(0.15)
	y := w.y + 4
	w.pdf.Line(w.field.left+52, y, w.field.left+112, y)
	w.pdf.Line(w.field.left+122, y, w.field.right, y)
}
