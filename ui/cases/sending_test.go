package cases

import (
	"path/filepath"
	"strings"
	"testing"
)

func TestACaseIsRemovedOnlyAfterItsCodeWasTyped(t *testing.T) {
	s, id := withCase(t)
	for _, want := range []string{"5 sittings", "17 photographs"} {
		if got := lossText(s.page.shown); !strings.Contains(got, want) {
			t.Errorf("the loss of %s is not said: %s", want, got)
		}
	}
	s.removeCase()
	if b := s.button("Remove for good"); b == nil || !b.Disabled() {
		t.Fatal("it can be removed before the code is typed")
	}
	typed := s.at.Canvas().Focused()
	for _, letter := range "S-012" {
		typed.TypedRune(letter)
	}
	s.press("Remove for good")
	s.until("no case is left", s.empty.Visible)
	if _, err := s.book.Case(id); err == nil {
		t.Error("the case is still there")
	}
}

func TestACaseGoesOutLockedAndComesInElsewhere(t *testing.T) {
	s, _ := withCase(t)
	f := s.newExportForm("S/012")
	if !strings.Contains(f.hint.Text, "Without a passphrase anyone") || f.save.Disabled() || filepath.Base(f.path()) != "S-012.ogive-case" {
		t.Errorf("it warns %q, saves as %s", f.hint.Text, f.path())
	}
	f.pass.SetText("crown and span")
	if !f.save.Disabled() || !strings.Contains(f.hint.Text, "not the same") {
		t.Errorf("one passphrase is enough: %q", f.hint.Text)
	}
	f.again.SetText("crown and span")
	if f.save.Disabled() {
		t.Errorf("it can't be saved: %q", f.hint.Text)
	}
	path := filepath.Join(t.TempDir(), "out.ogive-case")
	if err := s.book.Export(s.page.id, path, "crown and span"); err != nil {
		t.Fatal(err)
	}
	other := newScene(t, opened(t))
	other.until("it is empty", other.empty.Visible)
	other.receiveFrom(path, "", func(string) {})
	other.until("the passphrase is asked for", func() bool { return other.at.Canvas().Overlays().Top() != nil })
	pass := other.at.Canvas().Focused()
	for _, letter := range "crown and span" {
		pass.TypedRune(letter)
	}
	other.press("Open")
	other.until("the case is shown", func() bool { return other.page.shown.about.Code == "S-012" })
	if got := len(other.page.shown.photographs); got != 17 || other.at.Canvas().Overlays().Top() != nil {
		t.Errorf("%d photographs came in", got)
	}
}
