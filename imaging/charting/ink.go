package charting

import "image/color"

// Ink is the colours of a chart.
type Ink struct {
	Ground color.Color // the paper
	Text   color.Color
	Second color.Color // axes, legend, small print
	Faint  color.Color // lines that only guide the eye
	Own    color.Color // what the chart is about
	Other  color.Color // what it is held against
	Normal color.Color // a band in the background
}

// Paper is ink on paper, Chalk is chalk on slate.
var (
	Paper = Ink{
		Ground: rgb(0xfdfbf6), Text: rgb(0x1b2129), Second: rgb(0x535a63), Faint: rgb(0xcfc8b9),
		Own: rgb(0x8c420f), Other: rgb(0x2f5d8a), Normal: rgb(0xece5d3),
	}
	Chalk = Ink{
		Ground: rgb(0x1b1f24), Text: rgb(0xece7db), Second: rgb(0xa9adb1), Faint: rgb(0x434a53),
		Own: rgb(0xe3a05c), Other: rgb(0x8fbbe6), Normal: rgb(0x2b3138),
	}
)

func rgb(hex uint32) color.Color {
	return color.NRGBA{uint8(hex >> 16), uint8(hex >> 8), uint8(hex), 0xff}
}

// Faded is a colour with the given opacity.
func Faded(c color.Color, alpha uint8) color.Color {
	n := color.NRGBAModel.Convert(c).(color.NRGBA)
	n.A = alpha
	return n
}
