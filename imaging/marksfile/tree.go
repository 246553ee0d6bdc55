package marksfile

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"
)

// node is one value of a JSON text. Unlike the decoding into structs it keeps
// every name as it was written, so that doubled and misspelt ones are seen.
type node struct {
	kind    kind
	members []member
	items   []*node
	text    string
	number  json.Number
}

type member struct {
	name  string
	value *node
}

type kind int

const (
	aNull kind = iota
	aBool
	aNumber
	aText
	aList
	anObject
)

func (k kind) String() string {
	return [...]string{"null", "true or false", "a number", "a text", "a list", "an object"}[k]
}

const maxDepth = 8 // the deepest field, webs[0].edge[0][0], lies 4 deep

// parseTree reads a whole JSON text.
func parseTree(data []byte) (*node, error) {
	data = bytes.TrimPrefix(data, []byte("\xef\xbb\xbf"))
	switch {
	case len(data) > MaxSize:
		return nil, &Refusal{"", fmt.Sprintf("the file is larger than %d MB", MaxSize>>20), "give a marks file, or mark the photograph again"}
	case len(bytes.TrimSpace(data)) == 0:
		return nil, &Refusal{"", "the file is empty", "take a whole copy, or mark the photograph again"}
	case !utf8.Valid(data):
		return nil, &Refusal{"", "the file is not UTF-8 text", "save it again as UTF-8"}
	}
	p := treeParser{data: data, Decoder: json.NewDecoder(bytes.NewReader(data))}
	p.UseNumber()
	root, err := p.value("", 0)
	if err != nil {
		return nil, err
	}
	if _, err := p.Token(); !errors.Is(err, io.EOF) {
		return nil, &Refusal{"", "something follows the closing brace (" + p.place(p.InputOffset()) + ")", "remove it"}
	}
	return root, nil
}

// treeParser follows the tokens of a JSON text and knows the path it is at.
type treeParser struct {
	*json.Decoder
	data []byte
}

func (p treeParser) value(path string, depth int) (*node, error) {
	if depth > maxDepth {
		return nil, &Refusal{path, "lists and objects lie deeper than any marks go", "write it as in the description of the marks file"}
	}
	t, err := p.Token()
	if err != nil {
		return nil, p.broken(path, err)
	}
	switch t := t.(type) {
	case json.Delim:
		if t == '{' {
			return p.object(path, depth)
		}
		return p.list(path, depth)
	case json.Number:
		return &node{kind: aNumber, number: t}, nil
	case string:
		return &node{kind: aText, text: t}, nil
	case bool:
		return &node{kind: aBool}, nil
	}
	return &node{kind: aNull}, nil
}

func (p treeParser) object(path string, depth int) (*node, error) {
	n := &node{kind: anObject}
	seen := map[string]bool{}
	for p.More() {
		t, err := p.Token()
		if err != nil {
			return nil, p.broken(path, err)
		}
		name, ok := t.(string)
		if !ok {
			return nil, &Refusal{path, "a name is no text (" + p.place(p.InputOffset()) + ")", "write names in double quotes"}
		}
		at := inside(path, name)
		if seen[name] {
			return nil, &Refusal{at, "is there twice", "keep one of them"}
		}
		seen[name] = true
		v, err := p.value(at, depth+1)
		if err != nil {
			return nil, err
		}
		n.members = append(n.members, member{name, v})
	}
	return n, p.close(path)
}

func (p treeParser) list(path string, depth int) (*node, error) {
	n := &node{kind: aList}
	for p.More() {
		v, err := p.value(element(path, len(n.items)), depth+1)
		if err != nil {
			return nil, err
		}
		n.items = append(n.items, v)
	}
	return n, p.close(path)
}

func (p treeParser) close(path string) error {
	if _, err := p.Token(); err != nil {
		return p.broken(path, err)
	}
	return nil
}

// broken is a text that is no JSON.
func (p treeParser) broken(path string, err error) error {
	tooEarly := &Refusal{path, "the file ends too early", "take a whole copy, or mark the photograph again"}
	var syntax *json.SyntaxError
	if !errors.As(err, &syntax) {
		return tooEarly
	}
	// Only the check of the whole text counts from its beginning.
	errors.As(json.Unmarshal(p.data, new(json.RawMessage)), &syntax)
	at := max(syntax.Offset-1, 0)
	if word := wordAt(p.data, at); notNumbers[strings.ToLower(word)] {
		return &Refusal{path, word + " is not a number (" + p.place(at) + ")", "give a plain number"}
	}
	if strings.Contains(syntax.Error(), "unexpected end") {
		return tooEarly
	}
	return &Refusal{path, "this is not JSON (" + p.place(at) + "): " + syntax.Error(), "correct it there"}
}

var notNumbers = map[string]bool{"nan": true, "infinity": true, "inf": true, "-infinity": true, "-inf": true, "-nan": true, "+infinity": true, "+inf": true}

// wordAt is the run of letters and signs around an offset.
func wordAt(data []byte, at int64) string {
	part := func(c byte) bool {
		return c == '-' || c == '+' || 'a' <= c && c <= 'z' || 'A' <= c && c <= 'Z'
	}
	from := min(at, int64(len(data)))
	for from > 0 && part(data[from-1]) {
		from--
	}
	to := from
	for to < int64(len(data)) && part(data[to]) {
		to++
	}
	return string(data[from:to])
}

// place is an offset as line and column.
func (p treeParser) place(offset int64) string {
	before := p.data[:min(max(offset, 0), int64(len(p.data)))]
	line := bytes.Count(before, []byte("\n")) + 1
	column := utf8.RuneCount(before[bytes.LastIndexByte(before, '\n')+1:]) + 1
	return fmt.Sprintf("line %d, column %d", line, column)
}

func inside(path, name string) string {
	if len(name) > 40 {
		name = strings.ToValidUTF8(name[:40], "") + "…"
	}
	if !plainName(name) {
		name = fmt.Sprintf("%q", name)
	}
	if path == "" {
		return name
	}
	return path + "." + name
}

// plainName reports whether a name needs no quotes in a path.
func plainName(name string) bool {
	return name != "" && !strings.ContainsFunc(name, func(c rune) bool {
		return !(c == '_' || c == '$' || c == '-' || '0' <= c && c <= '9' || 'a' <= c && c <= 'z' || 'A' <= c && c <= 'Z')
	})
}

func element(path string, i int) string { return fmt.Sprintf("%s[%d]", path, i) }
