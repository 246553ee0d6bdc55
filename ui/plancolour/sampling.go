package plancolour

import (
	"slices"

	"fyne.io/fyne/v2/lang"

	"ogive/imaging/skin"
)

// sample reads the patches, if they are others than those read last.
func (p *Panel) sample() {
	patches := slices.Clone(p.file.Patches)
	if p.fresh && slices.Equal(patches, p.sampled) {
		return
	}
	p.sampled, p.fresh = patches, true
	p.asked++
	mine := p.asked
	if len(patches) == 0 {
		p.results.clear(lang.L("Nothing is sampled yet: place a patch of skin."))
		return
	}
	p.results.clear(lang.L("Reading the patches…"))
	from := p.source
	p.apart(func() {
		samples, remarks := skin.OfPlan(patches, from.photograph)
		p.do(func() {
			if mine != p.asked {
				return
			}
			p.results.show(samples, remarks, p.limits, p.title)
			p.page.Arrange()
		})
	})
}
