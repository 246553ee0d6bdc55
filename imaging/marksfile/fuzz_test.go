package marksfile

import (
	"errors"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// Whatever the text: it is refused with a mend, or it holds what the schema
// allows and comes back the same from what is saved.
func FuzzParse(f *testing.F) {
	for _, pattern := range []string{"*.json", "broken/*.json"} {
		for _, path := range sampleFiles(f, pattern) {
			data, err := os.ReadFile(path)
			if err != nil {
				f.Fatal(err)
			}
			f.Add(data)
		}
	}
	for name, list := range changes {
		text := sample(f, name)
		for _, c := range list {
			f.Add([]byte(strings.Replace(text, c.from, c.to, 1)))
		}
	}
	s := schema(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		file, err := Parse(data)
		if err != nil {
			var r *Refusal
			if !errors.As(err, &r) || r.Problem == "" || r.Mend == "" || strings.ContainsAny(err.Error(), "\n\r") {
				t.Errorf("%q is refused with %q", data, err)
			}
			return
		}
		if err := bySchema(s, data); err != nil {
			t.Errorf("%q is accepted, but the schema says %v", data, err)
		}
		saved, err := file.Encode()
		if err != nil {
			t.Fatalf("%q is read but not written: %v", data, err)
		}
		again, err := Parse(saved)
		if err != nil {
			t.Fatalf("%s is written but not read: %v", saved, err)
		}
		if diff := cmp.Diff(file, again); diff != "" {
			t.Errorf("%q comes back changed: %s", data, diff)
		}
		if err := file.Complete(); err != nil && !strings.Contains(err.Error(), ";") {
			t.Errorf("%q is not complete, without a mend: %v", data, err)
		}
	})
}
