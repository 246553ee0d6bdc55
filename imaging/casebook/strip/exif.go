package strip

import (
	"bytes"
	"encoding/binary"
	"slices"
)

// Tags kept (Exif 2.32, JEITA CP-3451; TIFF 6.0). No other tag passes, so that
// an unknown one can't carry a name.
var (
	keptFirst = []uint16{0x010f, 0x0110, 0x0112, 0x0132}            // make, model, orientation, date
	keptEXIF  = []uint16{0x9003, 0x9011, 0x920a, 0xa405}            // taken, zone, focal length, the same on 36 x 24 mm
	widths    = map[uint16]int{1: 1, 2: 1, 3: 2, 4: 4, 5: 8, 10: 8} // bytes of a value of each type
)

const (
	tagEXIF = 0x8769
	// longestValue is more than any date or camera name needs.
	longestValue = 64
	mostEntries  = 1000
)

// entry is one fact: the value in the byte order of the block it came from.
type entry struct {
	tag, kind uint16
	count     uint32
	value     []byte
}

// cleanEXIF is a new EXIF block with what is kept of an old one, nil if that is
// nothing.
func cleanEXIF(block []byte) []byte {
	if len(block) < 8 {
		return nil
	}
	var order byteOrder
	switch string(block[:4]) {
	case "II*\x00":
		order = binary.LittleEndian
	case "MM\x00*":
		order = binary.BigEndian
	default:
		return nil
	}
	at := order.Uint32(block[4:])
	first := kept(block, order, at, keptFirst)
	var exif []entry
	for _, e := range kept(block, order, at, []uint16{tagEXIF}) {
		if e.kind == 4 {
			exif = kept(block, order, order.Uint32(e.value), keptEXIF)
		}
	}
	if len(first)+len(exif) == 0 {
		return nil
	}
	return writeBlock(order, string(block[:4]), first, exif)
}

// kept is the facts of one directory that bear one of the tags, in order.
func kept(block []byte, order byteOrder, at uint32, tags []uint16) []entry {
	if uint64(at)+2 > uint64(len(block)) {
		return nil
	}
	var out []entry
	rest := block[at+2:]
	for range min(int(order.Uint16(block[at:])), mostEntries, len(rest)/12) {
		e := entry{order.Uint16(rest), order.Uint16(rest[2:]), order.Uint32(rest[4:]), nil}
		size := uint64(widths[e.kind]) * uint64(e.count)
		if slices.Contains(tags, e.tag) && size > 0 && size <= longestValue {
			e.value = rest[8 : 8+min(size, 4)]
			if size > 4 {
				e.value = nil
				if from := uint64(order.Uint32(rest[8:])); from+size <= uint64(len(block)) {
					e.value = block[from : from+size]
				}
			}
			if e.value != nil && !slices.ContainsFunc(out, func(o entry) bool { return o.tag == e.tag }) {
				out = append(out, upToZero(e))
			}
		}
		rest = rest[12:]
	}
	slices.SortFunc(out, func(a, b entry) int { return int(a.tag) - int(b.tag) })
	return out
}

// upToZero blanks what stands in a text behind its end.
func upToZero(e entry) entry {
	if end := bytes.IndexByte(e.value, 0); e.kind == 2 && end >= 0 {
		e.value = append(bytes.Clone(e.value[:end]), make([]byte, len(e.value)-end)...)
	}
	return e
}

// writeBlock writes two directories as a small TIFF file.
func writeBlock(order byteOrder, magic string, first, exif []entry) []byte {
	out := order.AppendUint32([]byte(magic), 8)
	if len(exif) > 0 {
		after := uint32(8 + spread(first) + 12)
		pointer := order.AppendUint32(nil, after)
		first = append(slices.Clone(first), entry{tagEXIF, 4, 1, pointer})
	}
	out = appendDirectory(out, order, first)
	if len(exif) > 0 {
		out = appendDirectory(out, order, exif)
	}
	return out
}

// spread is the bytes a directory takes with its values.
func spread(all []entry) int {
	n := 2 + 12*len(all) + 4
	for _, e := range all {
		if len(e.value) > 4 {
			n += len(e.value) + len(e.value)%2
		}
	}
	return n
}

func appendDirectory(out []byte, order byteOrder, all []entry) []byte {
	beyond := len(out) + 2 + 12*len(all) + 4
	var values []byte
	out = order.AppendUint16(out, uint16(len(all)))
	for _, e := range all {
		out = order.AppendUint16(out, e.tag)
		out = order.AppendUint16(out, e.kind)
		out = order.AppendUint32(out, e.count)
		if len(e.value) <= 4 {
			out = append(out, e.value...)
			out = append(out, make([]byte, 4-len(e.value))...)
			continue
		}
		out = order.AppendUint32(out, uint32(beyond+len(values)))
		values = append(values, e.value...)
		values = append(values, make([]byte, len(e.value)%2)...)
	}
	return append(order.AppendUint32(out, 0), values...)
}

// byteOrder is either way of writing numbers, to read and to write.
type byteOrder interface {
	binary.ByteOrder
	binary.AppendByteOrder
}
