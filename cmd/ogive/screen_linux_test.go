package main

import (
	"bufio"
	"bytes"
	"encoding/binary"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"os"
)

// picture is what the screen shows.
type picture struct{ *image.RGBA }

// look reads the screen from the file in which Xvfb keeps it, an X window dump
// (X11/XWDFile.h): a header of big-endian words, a table of colours, the pixels.
func (d *desktop) look() picture {
	d.t.Helper()
	data, err := os.ReadFile(d.frames)
	if err != nil {
		d.t.Fatal(err)
	}
	p, err := windowDump(data)
	if err != nil {
		d.t.Fatalf("%s: %v", d.frames, err)
	}
	return p
}

// Words of the header of a window dump.
const (
	dumpHeaderSize = 0
	dumpWidth      = 4
	dumpHeight     = 5
	dumpByteOrder  = 7
	dumpPixelBits  = 11
	dumpLine       = 12
	dumpRedMask    = 14
	dumpColours    = 19
	dumpWords      = 25
	bytesPerColour = 12
)

func windowDump(data []byte) (picture, error) {
	var words [dumpWords]uint32
	if err := binary.Read(bytes.NewReader(data), binary.BigEndian, &words); err != nil {
		return picture{}, err
	}
	if words[dumpByteOrder] != 0 || words[dumpPixelBits] != 32 || words[dumpRedMask] != 0xff0000 {
		return picture{}, fmt.Errorf("the screen is kept in another form than 32 bits a pixel, blue first: %v", words)
	}
	width, height, line := int(words[dumpWidth]), int(words[dumpHeight]), int(words[dumpLine])
	from := int(words[dumpHeaderSize] + bytesPerColour*words[dumpColours])
	if len(data) < from+height*line || line < 4*width {
		return picture{}, fmt.Errorf("the picture of the screen is cut off at %d bytes", len(data))
	}
	p := picture{image.NewRGBA(image.Rect(0, 0, width, height))}
	for y := range height {
		in, out := data[from+y*line:], p.Pix[y*p.Stride:]
		for x := 0; x < 4*width; x += 4 {
			out[x], out[x+1], out[x+2], out[x+3] = in[x+2], in[x+1], in[x], 255
		}
	}
	return p, nil
}

// empty reports whether the screen is black all over.
func (p picture) empty() bool {
	black := color.RGBA{A: 255}
	for y := 0; y < p.Rect.Dy(); y += 7 {
		for x := 0; x < p.Rect.Dx(); x += 7 {
			if p.RGBAAt(x, y) != black {
				return false
			}
		}
	}
	return true
}

// unlike is the greatest difference of a channel between two colours, 0 to 255.
func unlike(a, b color.RGBA) int {
	d := func(x, y uint8) int { return max(int(x)-int(y), int(y)-int(x)) }
	return max(d(a.R, b.R), d(a.G, b.G), d(a.B, b.B))
}

// changed is the share of an area's pixels that differ between two pictures.
func changed(a, b picture, area image.Rectangle) float64 {
	n := 0
	for y := area.Min.Y; y < area.Max.Y; y++ {
		for x := area.Min.X; x < area.Max.X; x++ {
			if unlike(a.RGBAAt(x, y), b.RGBAAt(x, y)) > 8 {
				n++
			}
		}
	}
	return float64(n) / float64(area.Dx()*area.Dy())
}

// grey is the picture without colour.
func (p picture) grey() *image.Gray {
	g := image.NewGray(p.Rect)
	for y := range p.Rect.Dy() {
		in, out := p.Pix[y*p.Stride:], g.Pix[y*g.Stride:]
		for x := range p.Rect.Dx() {
			out[x] = uint8((3*int(in[4*x]) + 6*int(in[4*x+1]) + int(in[4*x+2])) / 10)
		}
	}
	return g
}

func (p picture) save(path string) error {
	file, err := os.Create(path)
	if err != nil {
		return err
	}
	to := bufio.NewWriter(file)
	fast := png.Encoder{CompressionLevel: png.BestSpeed}
	if err := fast.Encode(to, p); err != nil {
		file.Close()
		return err
	}
	if err := to.Flush(); err != nil {
		file.Close()
		return err
	}
	return file.Close()
}
