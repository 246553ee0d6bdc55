package beside

import (
	"path/filepath"

	"fyne.io/fyne/v2/lang"

	"ogive/imaging/picturefile"
	"ogive/ui/saving"
)

// askWhere asks where the picture is to be saved.
func (r *Room) askWhere() {
	if !r.ready || r.sides[0].Photograph == nil {
		return
	}
	saving.Ask(r.win, saving.Question{
		Title: lang.L("Save the picture"), Hint: lang.L("A name that ends in .png or .jpg."),
		Name: "beside.png", Endings: []string{".png", ".jpg", ".jpeg"},
	}, r.save, nil)
}

// save draws the picture apart from the window and writes it whole or not at all.
func (r *Room) save(path string) {
	r.head.say(lang.L("Drawing {{.Name}}…", map[string]any{"Name": filepath.Base(path)}))
	draw := r.picture()
	r.apart(func() {
		err := picturefile.Write(path, draw())
		r.soon(func() {
			text := lang.L("The picture is saved as {{.Name}}.", map[string]any{"Name": path})
			if err != nil {
				text = lang.L("The picture is not saved: {{.Problem}}.", map[string]any{"Problem": err.Error()})
			}
			r.head.say(text)
		})
	})
}
