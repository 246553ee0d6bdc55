package phantom

import (
	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
)

// Example is an invented case to teach on; no patient stands behind it.
type Example struct {
	Name  string // short, fit for a file name
	Title string
	Case  Case
}

// Examples lists the invented teaching cases.
func Examples() []Example {
	soft := Light{Azimuth: plane.Degrees(-125), Elevation: plane.Degrees(52), Shadow: 0.45, Softness: 1.2}
	low := Light{Azimuth: plane.Degrees(-60), Elevation: plane.Degrees(42), Shadow: 0.6, Softness: 0.9}
	adult := Case{
		Seed: 11, Side: hand.Right, View: hand.Dorsal, Size: 43, Skin: Fair, Drape: TheatreGreen, Light: soft,
		Reference: WhiteRuler, Width: 2000, Height: 1500, NoiseSD: 1, Turn: plane.Degrees(3),
	}
	child := adult
	child.Seed, child.Size, child.Build, child.Skin, child.Drape = 23, 25, 1.05, Tan, Blue
	child.Light, child.Reference, child.Turn = low, PaperRuler, plane.Degrees(-4)
	infant := adult
	infant.Seed, infant.Size, infant.Build, infant.Skin, infant.Drape = 37, 16, 1.1, Dark, White
	infant.Reference, infant.Tilt, infant.TiltDirection = IDCard, plane.Degrees(6), plane.Degrees(70)

	deep := adult
	deep.Webs = map[hand.Web]WebShape{
		hand.SecondWeb: {Shape: arch.U, Index: 0.50, Span: 10.5, Flat: 0.35},
		hand.ThirdWeb:  {Shape: arch.Gothic, Index: 0.33, Span: 9.5, Turn: plane.Degrees(58)},
		hand.FourthWeb: {Shape: arch.U, Index: 0.48, Span: 10, Flat: 0.35},
	}
	crept := child
	crept.Side = hand.Left
	crept.Webs = map[hand.Web]WebShape{
		hand.SecondWeb: {Shape: arch.U, Index: 0.49, Span: 6.2, Flat: 0.35},
		hand.ThirdWeb:  {Shape: arch.Gothic, Index: 0.55, Span: 5.4, Turn: plane.Degrees(60)},
		hand.FourthWeb: {Shape: arch.V, Index: 0.74, Flare: plane.Degrees(7)},
	}
	wide := adult
	wide.Seed, wide.Skin, wide.Drape, wide.Reference = 41, Brown, Grey, SteelRuler
	wide.Webs = map[hand.Web]WebShape{
		hand.SecondWeb: {Shape: arch.U, Index: 0.47, Span: 17, Flat: 0.5},
		hand.ThirdWeb:  {Shape: arch.Gothic, Index: 0.54, Span: 9, Turn: plane.Degrees(62)},
		hand.FourthWeb: {Shape: arch.U, Index: 0.50, Span: 10, Flat: 0.35},
	}
	palmar := child
	palmar.Seed, palmar.View, palmar.Reference, palmar.Drape = 29, hand.Palmar, IDCard, DarkTeal
	steep := adult
	steep.Seed, steep.View, steep.Skin, steep.Drape, steep.JunctionSlope = 53, hand.WebView, Brown, Blue, plane.Degrees(62)
	steep.Webs = map[hand.Web]WebShape{hand.ThirdWeb: {}}
	sloped := steep
	sloped.Seed, sloped.Skin, sloped.JunctionSlope, sloped.Drape = 59, Beige, plane.Degrees(43), TheatreGreen

	return []Example{
		{"normal-adult", "Right hand of an adult, all webs normal", adult},
		{"deep-third", "Right hand of an adult, third web too deep", deep},
		{"crept-fourth", "Left hand of a child after release, fourth web crept", crept},
		{"wide-second", "Right hand of an adult, second web too wide", wide},
		{"normal-child-palmar", "Right palm of a child, all webs normal", palmar},
		{"normal-infant", "Right hand of an infant beside a card, camera tilted", infant},
		{"normal-slope", "Third web of an adult from the side, junction at a normal slope", sloped},
		{"steep-slope", "Third web of an adult from the side, junction too steep", steep},
	}
}
