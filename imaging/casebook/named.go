package casebook

import (
	"fmt"
	"strconv"

	"ogive/imaging/photo"
)

// NameOf is what the plan of one photograph calls another photograph of the
// casebook.
func NameOf(p Photograph) string { return strconv.FormatInt(p.ID, 10) }

// OpenNamed opens photographs as the plan on p names them: p itself by no name,
// others as by NameOf.
func (b *Casebook) OpenNamed(p Photograph) func(name string) (*photo.Photograph, error) {
	return func(name string) (*photo.Photograph, error) {
		if name == "" {
			return photo.Open(b.Path(p))
		}
		id, err := strconv.ParseInt(name, 10, 64)
		if err != nil {
			return nil, fmt.Errorf("%q names no photograph of the casebook; choose the patch's photograph anew", name)
		}
		other, err := b.Photograph(id)
		if err != nil {
			return nil, err
		}
		return photo.Open(b.Path(other))
	}
}
