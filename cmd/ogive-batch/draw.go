package main

import (
	"bytes"
	"fmt"
	"image"
	"image/jpeg"
	"image/png"
	"os"
	"path/filepath"
	"strings"

	"ogive/imaging/annotate"
	"ogive/imaging/measure"
	"ogive/imaging/wholefile"
)

type drawCommand struct {
	Marks string `arg:"" name:"MARKS.json" help:"The marks file."`
	Out   string `placeholder:"PICTURE.png" help:"Where the picture is written, as .png or .jpg; beside the marks file as NAME-marked.png if not given."`
}

// Validate refuses a kind of picture that can't be written.
func (c drawCommand) Validate() error {
	if _, ok := encoders[extension(c.out())]; !ok {
		return fmt.Errorf("--out is %s; give a name that ends in .png or .jpg", c.Out)
	}
	return nil
}

// Run draws the marked picture.
func (c drawCommand) Run(t terminal) error {
	settings, err := measure.Defaults()
	if err != nil {
		return err
	}
	subject, err := measure.Open(c.Marks)
	if err != nil {
		return err
	}
	if err := refuseOverwriting(c.out(), c.Marks, subject.Marks.PhotographPath(c.Marks)); err != nil {
		return err
	}
	result, err := subject.Measure(settings)
	if err != nil {
		return fmt.Errorf("%s: %w", c.Marks, err)
	}
	if err := writePicture(c.out(), drawn(subject, result)); err != nil {
		return err
	}
	_, err = fmt.Fprintln(t.out, c.out())
	return err
}

func (c drawCommand) out() string {
	if c.Out != "" {
		return c.Out
	}
	return strings.TrimSuffix(c.Marks, filepath.Ext(c.Marks)) + "-marked.png"
}

func drawn(s measure.Subject, r measure.Result) *image.RGBA {
	return annotate.Draw(s.Photograph, r.Marks.Marks, r.Marks.Reference, r.Reading)
}

// refuseOverwriting keeps the photograph and the marks from being drawn over,
// by whatever name they are reached.
func refuseOverwriting(out string, inputs ...string) error {
	there, err := os.Stat(out)
	if err != nil {
		return nil
	}
	for _, in := range inputs {
		if info, err := os.Stat(in); err == nil && os.SameFile(info, there) {
			return fmt.Errorf("%s: this is the file that is read and is not drawn over; give another name after --out", out)
		}
	}
	return nil
}

// encoders write a picture to memory, by the ending of its name.
var encoders = map[string]func(*bytes.Buffer, image.Image) error{
	".png": func(b *bytes.Buffer, img image.Image) error {
		return (&png.Encoder{CompressionLevel: png.BestSpeed}).Encode(b, img)
	},
	".jpg":  encodeJPEG,
	".jpeg": encodeJPEG,
}

func encodeJPEG(b *bytes.Buffer, img image.Image) error {
	return jpeg.Encode(b, img, &jpeg.Options{Quality: 92})
}

func extension(path string) string { return strings.ToLower(filepath.Ext(path)) }

func writePicture(path string, img image.Image) error {
	var data bytes.Buffer
	if err := encoders[extension(path)](&data, img); err != nil {
		return fmt.Errorf("%s: the picture can't be written: %w; measure a smaller copy of the photograph", path, err)
	}
	return wholefile.Write(path, data.Bytes())
}
