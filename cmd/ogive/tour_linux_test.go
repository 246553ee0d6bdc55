package main

import (
	"image"
	"testing"
)

// The tour goes through the rooms of the window; rounds have a test of their own,
// which is watched as well.
func TestTheWindowAsksForNoConnectionInAnyOfItsRooms(t *testing.T) {
	d := newDesktop(t)
	r := d.start()
	r.readCaution()
	r.followACase()
	r.compareHands()
	r.planOnAnExample()
	r.quit()
}

// followACase opens the example casebook and looks at its case over time.
func (r *running) followACase() {
	r.t.Helper()
	r.clickOn("See the example casebook")
	r.reach("EXAMPLE-1")
	r.clickOn("Over time")
	r.reach("Save as PNG…")
	r.clickOn("Back to the case")
}

// compareHands looks at a photograph of the case beside the other hand, and at how
// far observers agree.
func (r *running) compareHands() {
	r.t.Helper()
	r.reach("No photograph is chosen")
	r.clickOver("left · back")
	r.clickOn("Beside another…")
	r.reach("Beside which photograph?")
	r.clickOver("same day")
	r.reach("Operated left hand beside")
	r.clickOn("Back")
	r.reach("EXAMPLE-1")
	r.clickOn("Casebook")
	r.clickOn("How far observers agree")
	r.reach("Nothing to compare yet")
	r.clickOn("Back")
	r.clickOn("Back to the welcome page")
}

func (r *running) planOnAnExample() {
	r.t.Helper()
	r.clickOn("Plan an example")
	r.reach("Print sheet…")
	r.clickOn("Print sheet…")
	r.still()
	r.note("sheet")
}

// reach waits until a room that shows these words has come to rest.
func (r *running) reach(words string) {
	r.t.Helper()
	r.read(words)
	r.still()
	r.note(words)
}

// clickOver clicks on the picture over its caption.
func (r *running) clickOver(caption string) {
	r.t.Helper()
	at := r.read(caption)
	r.still()
	r.clickAt(at.Min.Sub(image.Pt(0, 40)))
}
