package photo

import (
	"encoding/binary"
	"errors"
	"image"
)

// heif is what the meta box of a HEIF file says of its items (ISO/IEC 14496-12,
// 8.11; ISO/IEC 23008-12, 6.5).
type heif struct {
	primary    uint32
	order      []uint32          // the items, as listed
	kinds      map[uint32]string // what each is: a picture, a grid of them, EXIF data
	places     map[uint32][]byte // the content of each that lies in one piece
	uses       map[uint32][]int  // the properties of each, counted from 1
	properties []box
	sizes      []image.Point // of every picture that the file declares
}

var errHEIF = errors.New("its table of contents is broken")

func readHEIF(data []byte) (*heif, error) {
	meta, ok := find(boxes(data), "meta")
	if !ok || len(meta) < 4 {
		return nil, errHEIF
	}
	parts := boxes(meta[4:])
	h := &heif{kinds: map[uint32]string{}, places: map[uint32][]byte{}, uses: map[uint32][]int{}}
	if body, ok := find(parts, "pitm"); ok {
		r := fieldsOf(body)
		h.primary = uint32(r.number(idBytes(r.version > 0)))
	}
	if body, ok := find(parts, "iinf"); ok {
		h.readKinds(body)
	}
	if body, ok := find(parts, "iloc"); ok {
		idat, _ := find(parts, "idat")
		h.readPlaces(body, data, idat)
	}
	if body, ok := find(parts, "iprp"); ok {
		h.readProperties(boxes(body))
	}
	h.readGrids()
	return h, nil
}

// primarySize is the size of the picture that the file shows, as it shows it.
func (h *heif) primarySize() (image.Point, error) {
	var size image.Point
	for _, i := range h.uses[h.primary] {
		if i < 1 || i > len(h.properties) {
			continue
		}
		p := h.properties[i-1]
		r := fields{rest: p.body}
		switch {
		case p.kind == "ispe" && len(p.body) >= 12:
			size = ispe(p.body)
		case p.kind == "clap" && len(p.body) >= 32:
			w, wd, h, hd := r.number(4), r.number(4), r.number(4), r.number(4)
			if wd > 0 && hd > 0 {
				size = image.Pt(min(size.X, int(w/wd)), min(size.Y, int(h/hd)))
			}
		case p.kind == "irot" && len(p.body) >= 1 && p.body[0]%2 == 1:
			size = image.Pt(size.Y, size.X)
		}
	}
	if size == (image.Point{}) {
		return size, errHEIF
	}
	return size, nil
}

func (h *heif) readKinds(body []byte) {
	r := fieldsOf(body)
	r.number(idBytes(r.version > 0))
	for _, b := range boxes(r.rest) {
		if b.kind != "infe" {
			continue
		}
		r := fieldsOf(b.body)
		if r.version < 2 {
			continue
		}
		id := uint32(r.number(idBytes(r.version > 2)))
		r.number(2)
		if len(r.rest) >= 4 {
			h.kinds[id] = string(r.rest[:4])
			h.order = append(h.order, id)
		}
	}
}

func (h *heif) readPlaces(body, file, idat []byte) {
	r := fieldsOf(body)
	widths := r.number(2)
	atBytes, lengthBytes := int(widths>>12), int(widths>>8&15)
	baseBytes, indexBytes := int(widths>>4&15), int(widths&15)
	for n := r.number(idBytes(r.version > 1)); n > 0 && !r.short; n-- {
		id := uint32(r.number(idBytes(r.version > 1)))
		source := file
		if r.version > 0 {
			if r.number(2)&15 == 1 {
				source = idat
			}
		} else {
			indexBytes = 0
		}
		r.number(2)
		base := r.number(baseBytes)
		extents := r.number(2)
		for range extents {
			r.number(indexBytes)
			at, length := base+r.number(atBytes), r.number(lengthBytes)
			if r.short {
				return
			}
			size := uint64(len(source))
			if extents == 1 && at <= size && length <= size-at {
				h.places[id] = source[at : at+length]
			}
		}
	}
}

func (h *heif) readProperties(parts []box) {
	if body, ok := find(parts, "ipco"); ok {
		h.properties = boxes(body)
	}
	for _, p := range h.properties {
		if p.kind == "ispe" && len(p.body) >= 12 {
			h.sizes = append(h.sizes, ispe(p.body))
		}
	}
	for _, p := range parts {
		if p.kind != "ipma" {
			continue
		}
		r := fieldsOf(p.body)
		for n := r.number(4); n > 0 && !r.short; n-- {
			id := uint32(r.number(idBytes(r.version > 0)))
			for range r.number(1) {
				if r.flags&1 != 0 {
					h.uses[id] = append(h.uses[id], int(r.number(2)&0x7fff))
				} else {
					h.uses[id] = append(h.uses[id], int(r.number(1)&0x7f))
				}
			}
		}
	}
}

// readGrids adds the sizes of pictures put together from tiles, which need not
// be what their properties say.
func (h *heif) readGrids() {
	for id, kind := range h.kinds {
		place := h.places[id]
		if kind != "grid" || len(place) < 8 {
			continue
		}
		r := fields{rest: place[4:]}
		n := 2 + 2*int(place[1]&1)
		h.sizes = append(h.sizes, image.Pt(int(r.number(n)), int(r.number(n))))
	}
}

func ispe(body []byte) image.Point {
	return image.Pt(int(binary.BigEndian.Uint32(body[4:])), int(binary.BigEndian.Uint32(body[8:])))
}

// box is one box of an ISO base media file.
type box struct {
	kind string
	body []byte
}

// boxes is the boxes that stand in data, up to the first broken one.
func boxes(data []byte) (all []box) {
	for len(data) >= 8 {
		n, head := uint64(binary.BigEndian.Uint32(data)), uint64(8)
		switch {
		case n == 0: // to the end
			n = uint64(len(data))
		case n == 1 && len(data) >= 16:
			n, head = binary.BigEndian.Uint64(data[8:]), 16
		}
		if n < head || n > uint64(len(data)) {
			return all
		}
		all = append(all, box{string(data[4:8]), data[head:n]})
		data = data[n:]
	}
	return all
}

func find(all []box, kind string) ([]byte, bool) {
	for _, b := range all {
		if b.kind == kind {
			return b.body, true
		}
	}
	return nil, false
}

// fields is numbers one after the other. Past the end they are 0.
type fields struct {
	version uint8
	flags   uint32
	rest    []byte
	short   bool
}

// fieldsOf is the fields of a box that begins with version and flags.
func fieldsOf(body []byte) fields {
	r := fields{rest: body}
	word := uint32(r.number(4))
	r.version, r.flags = uint8(word>>24), word&0xffffff
	return r
}

func (r *fields) number(bytes int) (v uint64) {
	if bytes > len(r.rest) {
		r.rest, r.short = nil, true
		return 0
	}
	for _, b := range r.rest[:bytes] {
		v = v<<8 | uint64(b)
	}
	r.rest = r.rest[bytes:]
	return v
}

func idBytes(long bool) int {
	if long {
		return 4
	}
	return 2
}
