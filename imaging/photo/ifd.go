package photo

import (
	"bytes"
	"encoding/binary"
	"strings"
	"time"
)

// Tags read here (Exif 2.32, JEITA CP-3451; TIFF 6.0).
const (
	tagMake         = 0x010f
	tagModel        = 0x0110
	tagOrientation  = 0x0112
	tagDateTime     = 0x0132
	tagThumbnail    = 0x0201 // where the preview's JPEG file begins
	tagThumbnailLen = 0x0202
	tagEXIF         = 0x8769 // where the EXIF directory begins
	tagTaken        = 0x9003
	tagTakenOffset  = 0x9011 // of the camera's clock from UTC
	tagFocal35      = 0xa405
)

// ifds is the three directories of an EXIF block that matter here. No chain of
// directories is followed any further, so a loop in the file is no danger.
type ifds struct{ first, exif, preview ifd }

// ifd is a directory: tag, type, count and value of each entry, as stored.
type ifd struct {
	block   []byte
	order   binary.ByteOrder
	entries []byte
	next    uint32
}

const entrySize = 12

func readIFDs(block []byte) (t ifds, ok bool) {
	if len(block) < 8 {
		return t, false
	}
	var order binary.ByteOrder
	switch string(block[:4]) {
	case "II*\x00":
		order = binary.LittleEndian
	case "MM\x00*":
		order = binary.BigEndian
	default:
		return t, false
	}
	if t.first, ok = readIFD(block, order, order.Uint32(block[4:])); !ok {
		return t, false
	}
	t.preview, _ = readIFD(block, order, t.first.next)
	t.exif, _ = readIFD(block, order, uint32(t.first.number(tagEXIF)))
	return t, true
}

func readIFD(block []byte, order binary.ByteOrder, at uint32) (d ifd, ok bool) {
	if at < 8 || uint64(at)+2 > uint64(len(block)) {
		return d, false
	}
	rest := block[at+2:]
	n := min(int(order.Uint16(block[at:])), len(rest)/entrySize)
	d = ifd{block: block, order: order, entries: rest[:n*entrySize]}
	if rest = rest[n*entrySize:]; len(rest) >= 4 {
		d.next = order.Uint32(rest)
	}
	return d, true
}

// entry is the type, count and value field of a tag.
func (d ifd) entry(tag uint16) (kind uint16, count uint32, value []byte, ok bool) {
	for e := d.entries; len(e) >= entrySize; e = e[entrySize:] {
		if d.order.Uint16(e) == tag {
			return d.order.Uint16(e[2:]), d.order.Uint32(e[4:]), e[8:entrySize], true
		}
	}
	return 0, 0, nil, false
}

// number is the first value of a whole-numbered tag, 0 if there is none.
func (d ifd) number(tag uint16) int {
	kind, count, value, ok := d.entry(tag)
	switch {
	case !ok || count == 0:
		return 0
	case kind == 1:
		return int(value[0])
	case kind == 3:
		return int(d.order.Uint16(value))
	case kind == 4:
		return int(d.order.Uint32(value))
	}
	return 0
}

// text is the value of an ASCII tag, "" if there is none.
func (d ifd) text(tag uint16) string {
	kind, count, value, ok := d.entry(tag)
	if !ok || kind != 2 {
		return ""
	}
	if count > 4 {
		at := d.order.Uint32(value)
		if uint64(at)+uint64(count) > uint64(len(d.block)) || count > 1000 {
			return ""
		}
		value = d.block[at : uint64(at)+uint64(count)]
	} else {
		value = value[:count]
	}
	if end := bytes.IndexByte(value, 0); end >= 0 {
		value = value[:end]
	}
	return strings.TrimSpace(strings.ToValidUTF8(string(value), "?"))
}

func (t ifds) facts() Facts {
	return Facts{Taken: t.taken(), Camera: t.camera(), Focal35: float64(t.exif.number(tagFocal35))}
}

// taken is when the shutter was pressed, by the camera's clock: in its own zone
// if the file names one, else as if that were UTC.
func (t ifds) taken() time.Time {
	when := t.exif.text(tagTaken)
	if when == "" {
		when = t.first.text(tagDateTime)
	}
	if at, err := time.Parse("2006:01:02 15:04:05-07:00", when+t.exif.text(tagTakenOffset)); err == nil {
		return at
	}
	at, err := time.Parse("2006:01:02 15:04:05", when)
	if err != nil {
		return time.Time{}
	}
	return at
}

// camera is maker and model; many cameras repeat the maker in the model.
func (t ifds) camera() string {
	maker, model := t.first.text(tagMake), t.first.text(tagModel)
	if maker == "" || strings.HasPrefix(strings.ToLower(model), strings.ToLower(maker)) {
		return model
	}
	return strings.TrimSpace(maker + " " + model)
}
