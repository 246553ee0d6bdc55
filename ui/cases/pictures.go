package cases

import (
	"bytes"
	"image"
	"image/jpeg"
	"sync"

	"ogive/imaging/casebook"
)

// mostPictures is how many small pictures are kept in memory, some 100 kB each:
// those of a few large cases.
const mostPictures = 240

// pictures keeps small pictures of photographs by their hash.
type pictures struct {
	lock  sync.Mutex
	kept  map[string]image.Image
	order []string // the oldest first
}

func newPictures() *pictures { return &pictures{kept: map[string]image.Image{}} }

// at is the small picture if it has been loaded.
func (p *pictures) at(hash string) image.Image {
	p.lock.Lock()
	defer p.lock.Unlock()
	return p.kept[hash]
}

// load is the small picture, nil if the photograph can't be read.
func (p *pictures) load(book *casebook.Casebook, of casebook.Photograph) image.Image {
	if m := p.at(of.Hash); m != nil {
		return m
	}
	data, err := book.Thumbnail(of)
	if err != nil {
		return nil
	}
	m, err := jpeg.Decode(bytes.NewReader(data))
	if err != nil {
		return nil
	}
	p.keep(of.Hash, m)
	return m
}

func (p *pictures) keep(hash string, m image.Image) {
	p.lock.Lock()
	defer p.lock.Unlock()
	if p.kept[hash] == nil {
		p.order = append(p.order, hash)
	}
	p.kept[hash] = m
	for len(p.order) > mostPictures {
		delete(p.kept, p.order[0])
		p.order = p.order[1:]
	}
}
