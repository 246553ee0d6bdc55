// Package drawing shows the project's own line drawings in the colours of the
// theme in use: hands as they can be seen, and how a photograph is taken.
//
//	tile := drawing.New(drawing.Back, fyne.NewSize(120, 144))
//	tile.Mirrored = side == hand.Left
//
// A drawing is an SVG file in which colours are named, such as {{skin}}.
package drawing

import (
	"embed"
	"fmt"
	"image/color"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/ui/look"
)

// Name names a drawing.
type Name string

// The drawings. The first two are right hands with the thumb at the left: the
// back of a right hand, the palm of a left one.
const (
	Back    Name = "back"
	Palm    Name = "palm"
	Web     Name = "web"
	Square  Name = "square"
	Height  Name = "height"
	Drape   Name = "drape"
	Fingers Name = "fingers"
	Views   Name = "views"
)

// Names lists all of them.
var Names = []Name{Back, Palm, Web, Square, Height, Drape, Fingers, Views}

//go:embed pictures/*.svg
var pictures embed.FS

// Drawing is a widget that shows one drawing, as large as fits.
type Drawing struct {
	widget.BaseWidget
	// Mirrored swaps left and right; set it before the drawing is shown.
	Mirrored bool

	name Name
	min  fyne.Size
}

// New is the drawing, at least as large as min.
func New(name Name, least fyne.Size) *Drawing {
	d := &Drawing{name: name, min: least}
	d.ExtendBaseWidget(d)
	return d
}

// CreateRenderer is called by Fyne.
func (d *Drawing) CreateRenderer() fyne.WidgetRenderer {
	image := canvas.NewImageFromResource(d.resource())
	image.FillMode = canvas.ImageFillContain
	return &renderer{drawing: d, image: image}
}

type renderer struct {
	drawing *Drawing
	image   *canvas.Image
}

func (r *renderer) Layout(size fyne.Size)        { r.image.Resize(size) }
func (r *renderer) MinSize() fyne.Size           { return r.drawing.min }
func (r *renderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.image} }
func (r *renderer) Destroy()                     {}

func (r *renderer) Refresh() {
	r.image.Resource = r.drawing.resource()
	r.image.Refresh()
}

// resource is the drawing in the colours of now. Fyne keeps pictures by their
// name, which therefore tells one set of colours from another.
func (d *Drawing) resource() fyne.Resource {
	data, err := pictures.ReadFile("pictures/" + string(d.name) + ".svg")
	if err != nil {
		panic(fmt.Sprintf("drawing: the program was built without %s.svg", d.name))
	}
	mirror := "translate(0 0)"
	if d.Mirrored {
		mirror = "translate(200 0) scale(-1 1)"
	}
	drawn := strings.NewReplacer(
		"{{mirror}}", mirror,
		"{{skin}}", hex(look.Skin),
		"{{palm}}", hex(look.PalmSkin),
		"{{line}}", hex(look.SkinLine),
		"{{ink}}", hex(theme.ColorNameForeground),
		"{{second}}", hex(look.SecondInk),
		"{{paper}}", hex(look.Card),
		"{{accent}}", hex(look.Accent),
		"{{well}}", hex(look.Well),
		"{{amiss}}", hex(theme.ColorNameError),
		"{{drape}}", hex(look.Hairline),
		"{{check}}", hex(look.Hairline),
	).Replace(string(data))
	name := fmt.Sprintf("%s-%t-%s.svg", d.name, d.Mirrored, hex(look.Skin)+hex(look.Card))
	return fyne.NewStaticResource(name, []byte(drawn))
}

func hex(name fyne.ThemeColorName) string {
	c := color.NRGBAModel.Convert(look.Colour(name)).(color.NRGBA)
	return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B)
}
