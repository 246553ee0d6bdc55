package look

import (
	"embed"
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// IconName names one of the program's own icons.
type IconName string

// The icons of the steps, then those of commands.
const (
	IconScale    IconName = "scale"
	IconJoints   IconName = "joints"
	IconWebs     IconName = "webs"
	IconJunction IconName = "junction"

	IconSkip    IconName = "skip"
	IconAccept  IconName = "accept"
	IconOpen    IconName = "open"
	IconPicture IconName = "picture"
	IconCopy    IconName = "copy"
	IconUndo    IconName = "undo"
	IconRedo    IconName = "redo"
	IconFit     IconName = "fit"
	IconPixel   IconName = "pixel"
	IconCamera  IconName = "camera"
	IconExample IconName = "example"
	IconWarning IconName = "warning"

	IconPlan      IconName = "plan"
	IconCasebook  IconName = "casebook"
	IconRound     IconName = "round"
	IconAgreement IconName = "agreement"

	IconSkin   IconName = "skin"
	IconColour IconName = "colour"
	IconFamily IconName = "family"
	IconSheet  IconName = "sheet"
)

// Icons lists all of them.
var Icons = []IconName{
	IconScale, IconJoints, IconWebs, IconJunction, IconSkip, IconAccept, IconOpen, IconPicture,
	IconCopy, IconUndo, IconRedo, IconFit, IconPixel, IconCamera, IconExample, IconWarning,
	IconPlan, IconCasebook, IconRound, IconAgreement,
	IconSkin, IconColour, IconFamily, IconSheet,
}

//go:embed icons/*.svg
var iconFiles embed.FS

// themed are built once, so that Fyne can keep what it has drawn of them.
var themed = loadIcons()

func loadIcons() map[IconName]fyne.Resource {
	m := map[IconName]fyne.Resource{}
	for _, name := range Icons {
		file := "icons/" + string(name) + ".svg"
		data, err := iconFiles.ReadFile(file)
		if err != nil {
			panic(fmt.Sprintf("look: the program was built without %s", file))
		}
		shapes, err := outlined(data)
		if err != nil {
			panic(fmt.Sprintf("look: %s: %v", file, err))
		}
		m[name] = theme.NewThemedResource(fyne.NewStaticResource("ogive-"+string(name)+".svg", shapes))
	}
	return m
}

// Icon is the icon in the colour of text.
func Icon(name IconName) fyne.Resource { return themed[name] }

// ColouredIcon is the icon in another colour of the theme.
func ColouredIcon(name IconName, colour fyne.ThemeColorName) fyne.Resource {
	return theme.NewColoredResource(themed[name], colour)
}
