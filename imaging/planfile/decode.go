package planfile

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"unicode/utf8"

	"ogive/imaging/marksfile"
)

// MaxSize is the size in bytes beyond which a file is refused unread.
const MaxSize = 4 << 20

const maxDepth = 12 // the deepest field, webs[0].alternatives[0].flap.outline[0][0], lies 8 deep

// decode reads a whole JSON text and refuses a name that stands twice in one
// object, which a decoder would pass over.
func decode(data []byte) (any, error) {
	data = bytes.TrimPrefix(data, []byte("\xef\xbb\xbf"))
	switch {
	case len(data) > MaxSize:
		return nil, &marksfile.Refusal{Problem: fmt.Sprintf("the file is larger than %d MB", MaxSize>>20), Mend: "give a plan file"}
	case len(bytes.TrimSpace(data)) == 0:
		return nil, &marksfile.Refusal{Problem: "the file is empty", Mend: "take a whole copy, or plan again"}
	case !utf8.Valid(data):
		return nil, &marksfile.Refusal{Problem: "the file is not UTF-8 text", Mend: "save it again as UTF-8"}
	}
	d := json.NewDecoder(bytes.NewReader(data))
	d.UseNumber()
	root, err := decodeValue(d, "", 0)
	if err != nil {
		return nil, err
	}
	if _, err := d.Token(); !errors.Is(err, io.EOF) {
		return nil, &marksfile.Refusal{Problem: "something follows the closing brace", Mend: "remove it"}
	}
	return root, nil
}

func decodeValue(d *json.Decoder, path string, depth int) (any, error) {
	if depth > maxDepth {
		return nil, &marksfile.Refusal{Field: path, Problem: "lists and objects lie deeper than any plan goes", Mend: "write it as in the description of the plan file"}
	}
	t, err := d.Token()
	if err != nil {
		return nil, broken(path, err)
	}
	switch t {
	case json.Delim('{'):
		return decodeObject(d, path, depth)
	case json.Delim('['):
		return decodeList(d, path, depth)
	}
	return t, nil
}

func decodeObject(d *json.Decoder, path string, depth int) (any, error) {
	var out members
	for d.More() {
		t, err := d.Token()
		if err != nil {
			return nil, broken(path, err)
		}
		name, ok := t.(string)
		if !ok {
			return nil, &marksfile.Refusal{Field: path, Problem: "a name is no text", Mend: "write names in double quotes"}
		}
		at := inside(path, name)
		if _, twice := out.find(name); twice {
			return nil, &marksfile.Refusal{Field: at, Problem: "is there twice", Mend: "keep one of them"}
		}
		v, err := decodeValue(d, at, depth+1)
		if err != nil {
			return nil, err
		}
		out = append(out, member{name, v})
	}
	return out, closing(d, path)
}

// members are those of an object, in the order of the file.
type members []member

type member struct {
	name  string
	value any
}

func (m members) find(name string) (value any, there bool) {
	for _, e := range m {
		if e.name == name {
			return e.value, true
		}
	}
	return nil, false
}

func decodeList(d *json.Decoder, path string, depth int) (any, error) {
	out := []any{}
	for d.More() {
		v, err := decodeValue(d, fmt.Sprintf("%s[%d]", path, len(out)), depth+1)
		if err != nil {
			return nil, err
		}
		out = append(out, v)
	}
	return out, closing(d, path)
}

func closing(d *json.Decoder, path string) error {
	if _, err := d.Token(); err != nil {
		return broken(path, err)
	}
	return nil
}

// broken is a text that is no JSON.
func broken(path string, err error) error {
	var syntax *json.SyntaxError
	if errors.As(err, &syntax) {
		return &marksfile.Refusal{Field: path, Problem: fmt.Sprintf("this is not JSON (near byte %d): %v", syntax.Offset, syntax), Mend: "correct it there"}
	}
	return &marksfile.Refusal{Field: path, Problem: "the file ends too early", Mend: "take a whole copy, or plan again"}
}
