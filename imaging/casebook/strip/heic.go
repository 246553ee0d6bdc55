package strip

import (
	"bytes"
	"encoding/binary"
	"errors"
)

var errHEIC = errors.New("is a HEIC file whose hidden facts can't be removed safely; export it as JPEG")

// pictureKinds are the items that hold pictures or put them together; all
// others carry facts (ISO/IEC 23008-12; ISO/IEC 14496-12, 8.11).
var pictureKinds = map[string]bool{"hvc1": true, "hev1": true, "grid": true, "iden": true, "iovl": true}

// cleanHEIC blanks in place, so that every piece of the picture stays where the
// table of contents says it is: what belongs to no picture is overwritten, and
// the EXIF item gets a new, shorter block.
func cleanHEIC(data []byte) ([]byte, error) {
	out := bytes.Clone(data)
	var meta []byte
	for rest := out; len(rest) > 0; {
		kind, body, n, ok := boxAt(rest)
		if !ok {
			return nil, errHEIC
		}
		switch kind {
		case "ftyp", "mdat":
		case "meta":
			if meta != nil || len(body) < 4 {
				return nil, errHEIC
			}
			meta = body[4:]
		default:
			copy(rest[4:8], "free")
			clear(body)
		}
		rest = rest[n:]
	}
	items, err := itemsOf(meta, len(out))
	if err != nil {
		return nil, err
	}
	blank(out, data, items)
	return out, nil
}

// blank overwrites all media data that belong to no picture, and puts the kept
// facts where the EXIF data were, if they have room there.
func blank(out, data []byte, items []item) {
	for rest, at := out, 0; len(rest) > 0; {
		kind, body, n, _ := boxAt(rest)
		if kind == "mdat" {
			clear(body)
			from := at + n - len(body)
			for _, it := range items {
				if !pictureKinds[it.kind] {
					continue
				}
				for _, p := range it.pieces {
					lo, hi := max(p[0], from), min(p[1], at+n)
					if lo < hi {
						copy(out[lo:hi], data[lo:hi])
					}
				}
			}
		}
		rest, at = rest[n:], at+n
	}
	for _, it := range items {
		if it.kind == "Exif" && len(it.pieces) == 1 {
			writeFacts(out, data, items, it.pieces[0])
			return
		}
	}
}

func writeFacts(out, data []byte, items []item, place [2]int) {
	for _, it := range items {
		for _, p := range it.pieces {
			if pictureKinds[it.kind] && p[0] < place[1] && place[0] < p[1] {
				return
			}
		}
	}
	block := data[place[0]:place[1]]
	if len(block) < 4 {
		return
	}
	skip := uint64(binary.BigEndian.Uint32(block))
	if 4+skip > uint64(len(block)) {
		return
	}
	clean := cleanEXIF(block[4+skip:])
	clear(out[place[0]:place[1]])
	if clean == nil || 4+len(clean) > len(block) {
		return
	}
	copy(out[place[0]+4:], clean)
}

type item struct {
	id     uint32
	kind   string
	pieces [][2]int // from and to in the file
}

// itemsOf reads the table of contents, and blanks the texts in it. A table in
// any form but the plain one of cameras is refused.
func itemsOf(meta []byte, size int) ([]item, error) {
	var items []item
	var places []byte
	for rest := meta; len(rest) > 0; {
		kind, body, n, ok := boxAt(rest)
		if !ok {
			return nil, errHEIC
		}
		switch kind {
		case "iinf":
			if items, ok = itemKinds(body); !ok {
				return nil, errHEIC
			}
		case "iloc":
			places = body
		case "hdlr":
			if len(body) > 24 {
				clear(body[24:])
			}
		case "iprp":
			blankProperties(body)
		case "pitm", "iref", "dinf", "idat", "grpl", "free":
		default:
			copy(rest[4:8], "free")
			clear(body)
		}
		rest = rest[n:]
	}
	if items == nil || places == nil {
		return nil, errHEIC
	}
	return located(items, places, size)
}

// blankProperties overwrites properties other than those that decide how the
// picture looks, such as a description by the user.
func blankProperties(body []byte) {
	for rest := body; len(rest) > 0; {
		kind, inner, n, ok := boxAt(rest)
		if !ok {
			return
		}
		switch kind {
		case "ipco":
			blankProperties(inner)
		case "udes", "uuid":
			copy(rest[4:8], "free")
			clear(inner)
		}
		rest = rest[n:]
	}
}

func itemKinds(body []byte) ([]item, bool) {
	if len(body) < 6 {
		return nil, false
	}
	rest := body[6:]
	if body[0] > 0 {
		if len(body) < 8 {
			return nil, false
		}
		rest = body[8:]
	}
	items := []item{}
	for len(rest) > 0 {
		kind, entry, n, ok := boxAt(rest)
		if !ok || kind != "infe" || len(entry) < 13 || entry[0] != 2 {
			return nil, false
		}
		it := item{id: uint32(binary.BigEndian.Uint16(entry[4:])), kind: string(entry[8:12])}
		if pictureKinds[it.kind] {
			clear(entry[12:]) // its name
		}
		items = append(items, it)
		rest = rest[n:]
	}
	return items, true
}

// located adds where the items lie. Items outside the file's own media data
// (construction method 1) hold the plan of a grid.
func located(items []item, body []byte, size int) ([]item, error) {
	if len(body) < 8 || body[0] > 1 {
		return nil, errHEIC
	}
	version := body[0]
	atBytes, lengthBytes, baseBytes, indexBytes := int(body[4]>>4), int(body[4]&15), int(body[5]>>4), int(body[5]&15)
	if version == 0 {
		indexBytes = 0
	}
	r := reader{rest: body[6:]}
	for n := r.number(2); n > 0; n-- {
		id, inFile := uint32(r.number(2)), true
		if version == 1 {
			inFile = r.number(2)&15 == 0
		}
		r.number(2)
		base := r.number(baseBytes)
		for extents := r.number(2); extents > 0; extents-- {
			r.number(indexBytes)
			from := base + r.number(atBytes)
			to := from + r.number(lengthBytes)
			if r.short || inFile && (from > to || to > uint64(size)) {
				return nil, errHEIC
			}
			for i := range items {
				if items[i].id == id && inFile {
					items[i].pieces = append(items[i].pieces, [2]int{int(from), int(to)})
				} else if items[i].id == id && !pictureKinds[items[i].kind] {
					return nil, errHEIC
				}
			}
		}
	}
	return items, nil
}

// reader is numbers one after the other.
type reader struct {
	rest  []byte
	short bool
}

func (r *reader) number(bytes int) (v uint64) {
	if bytes > len(r.rest) || bytes > 8 {
		r.rest, r.short = nil, true
		return 0
	}
	for _, b := range r.rest[:bytes] {
		v = v<<8 | uint64(b)
	}
	r.rest = r.rest[bytes:]
	return v
}

// boxAt is the box that data begins with, and its length.
func boxAt(data []byte) (kind string, body []byte, n int, ok bool) {
	if len(data) < 8 {
		return "", nil, 0, false
	}
	size, head := uint64(binary.BigEndian.Uint32(data)), uint64(8)
	switch {
	case size == 0:
		size = uint64(len(data))
	case size == 1 && len(data) >= 16:
		size, head = binary.BigEndian.Uint64(data[8:]), 16
	}
	if size < head || size > uint64(len(data)) {
		return "", nil, 0, false
	}
	return string(data[4:8]), data[head:size], int(size), true
}
