package main

import (
	"bytes"
	"errors"
	"image"
	"io/fs"
	"os"
	"path/filepath"
	"testing"
)

// The tour goes through the rooms that no other walk goes through. Every walk is
// watched for connections; this one is there for nothing else.
func TestTheWindowAsksForNoConnectionInItsOtherRooms(t *testing.T) {
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
	r.clickOn("Back to the start page")
}

// planOnAnExample saves the sheet of an example plan.
func (r *running) planOnAnExample() {
	r.t.Helper()
	r.clickOn("Plan an example")
	r.reach("Print sheet…")
	r.clickOn("Print sheet…")
	r.clickOn("Save the sheet (PDF)…")
	r.reach("Another folder…")
	r.press("Return")
	r.wait("the sheet is on the disk", func() bool { return len(r.saved(".pdf")) == 1 })
	sheet, err := os.ReadFile(r.saved(".pdf")[0])
	if err != nil {
		r.t.Fatal(err)
	}
	if !bytes.HasPrefix(sheet, []byte("%PDF-")) || !bytes.Contains(sheet, []byte("%%EOF")) {
		r.t.Errorf("what was saved as the sheet is no whole PDF: %d bytes", len(sheet))
	}
	r.still()
	r.note("the sheet is saved")
}

// saved is what the program has written into the user's folder with that ending.
func (r *running) saved(ending string) []string {
	r.t.Helper()
	var found []string
	err := filepath.WalkDir(r.folder, func(path string, _ fs.DirEntry, err error) error {
		if err == nil && filepath.Ext(path) == ending {
			found = append(found, path)
		}
		if errors.Is(err, fs.ErrNotExist) {
			return nil // a file of the program's own that was passing
		}
		return err
	})
	if err != nil {
		r.t.Fatal(err)
	}
	return found
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
