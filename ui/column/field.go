package column

import (
	"strconv"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/ui/look"
)

// Field is a place to write in. What was written is done with Enter, by leaving
// the field, or once the writer has paused. Blanks around it don't count.
type Field struct {
	widget.Entry
	// OnDone is told what was written, if it is another text than before.
	OnDone func(text string)
	// OnHeight is called when an area is written in, which may make it higher.
	OnHeight func()

	measure *Text // of an area
	canon   func(text string) string
	shown   string // what Fill has shown, or what was done last
	filling bool
	pause   *time.Timer
	writing int // counts changes, so that a pause that was broken is known
}

// pauseLength is how long a writer rests before what was written counts.
const pauseLength = 1200 * time.Millisecond

// NewField is a field of one line.
func NewField(hint string) *Field { return newField(hint, false) }

// NewArea is a field of several lines.
func NewArea(hint string, lines int) *Field {
	f := newField(hint, true)
	f.Wrapping = fyne.TextWrapWord
	f.SetMinRowsVisible(lines)
	f.measure = Body("")
	return f
}

// HeightAt is called by flow: an area is as high as its text, so that it never
// scrolls within a page that does.
func (f *Field) HeightAt(width float32) float32 {
	if f.measure == nil {
		return f.MinSize().Height
	}
	rim := look.Size(theme.SizeNameInnerPadding) + look.Size(theme.SizeNameInputBorder)
	f.measure.Set(f.Text + " ")
	return max(f.MinSize().Height, f.measure.HeightAt(width-2*rim-2)+2*rim)
}

// NewNumber is a field for a number; 36, 36.0 and 36,0 are the same to it.
func NewNumber(hint string) *Field {
	f := newField(hint, false)
	f.canon = func(text string) string {
		if v, given, ok := Number(text); ok && given {
			return Plain(v)
		}
		return strings.TrimSpace(text)
	}
	return f
}

func newField(hint string, lines bool) *Field {
	f := &Field{canon: strings.TrimSpace}
	f.MultiLine = lines
	f.PlaceHolder = hint
	f.OnChanged = func(string) { f.changed() }
	f.OnSubmitted = func(string) { f.Finish() }
	f.ExtendBaseWidget(f)
	return f
}

// Fill shows a text. What is being written is left alone while it still means
// the same.
func (f *Field) Fill(text string) {
	text = f.canon(text)
	if text == f.shown {
		return
	}
	f.stop()
	f.shown = text
	f.filling = true
	f.SetText(text)
	f.filling = false
}

func (f *Field) changed() {
	if f.filling {
		return
	}
	f.stop()
	if f.OnHeight != nil {
		f.OnHeight()
	}
	mine := f.writing
	f.pause = time.AfterFunc(pauseLength, func() {
		fyne.Do(func() {
			if mine == f.writing {
				f.Finish()
			}
		})
	})
}

func (f *Field) stop() {
	if f.pause != nil {
		f.pause.Stop()
		f.pause = nil
	}
	f.writing++
}

// Finish tells what was written, if it has not been told yet.
func (f *Field) Finish() {
	f.stop()
	text := f.canon(f.Text)
	if text == f.shown {
		return
	}
	f.shown = text
	if f.OnDone != nil {
		f.OnDone(text)
	}
}

// FocusLost is called by Fyne.
func (f *Field) FocusLost() {
	f.Entry.FocusLost()
	f.Finish()
}

// Number reads a number that is written with a point or a comma. Given is false
// of an empty text; ok is false of what is no number above zero.
func Number(text string) (v float64, given, ok bool) {
	text = strings.TrimSpace(strings.Replace(text, ",", ".", 1))
	if text == "" {
		return 0, false, true
	}
	v, err := strconv.ParseFloat(text, 64)
	return v, true, err == nil && v > 0 && v < 1e6
}

// Plain writes a number without needless digits; zero is no text.
func Plain(v float64) string {
	if v == 0 {
		return ""
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}
