package strip

import (
	"bytes"
	"strings"
	"testing"
)

// containers are the cleaners by the letter that a fuzzed input begins with.
var containers = map[byte]func([]byte) ([]byte, error){
	'j': cleanJPEG, 'p': cleanPNG, 'w': cleanWebP, 'h': cleanHEIC,
	'e': func(data []byte) ([]byte, error) { return cleanEXIF(data), nil },
}

// Whatever the container holds: it is cleaned or refused without a panic, what
// comes out is hardly longer than what went in, and cleaning it again changes
// nothing. Pixels are not decoded here, so that many inputs are tried.
func FuzzContainers(f *testing.F) {
	for kind, name := range map[byte]string{'j': "restarts.jpg", 'p': "turned.png", 'w': "turned.webp"} {
		f.Add(kind, seed(f, name))
	}
	f.Add(byte('j'), tellingJPEG(f))
	f.Add(byte('h'), tellingHEIC(f))
	f.Add(byte('e'), tellingEXIF())
	f.Fuzz(func(t *testing.T, kind byte, data []byte) {
		clean, ok := containers[kind]
		if !ok || len(data) < 12 { // shorter ones are told apart before
			return
		}
		before := bytes.Clone(data)
		once, err := clean(data)
		if !bytes.Equal(before, data) {
			t.Error("the original was changed")
		}
		if err != nil {
			if !strings.Contains(err.Error(), ";") || strings.ContainsAny(err.Error(), "\r\n") {
				t.Errorf("refused with %q", err)
			}
			return
		}
		if len(once) > len(data)+64 {
			t.Errorf("%d bytes became %d", len(data), len(once))
		}
		if once == nil {
			return
		}
		twice, err := clean(once)
		if err != nil || !bytes.Equal(once, twice) {
			t.Errorf("cleaning twice gives something else: %v", err)
		}
	})
}

// Whatever the file: it is cleaned into a photograph that can be read, or it is
// refused with a mend; the program itself never fails on it.
func FuzzPhotograph(f *testing.F) {
	for _, name := range []string{"restarts.jpg", "turned.png", "turned.tif", "turned.webp"} {
		f.Add(seed(f, name))
	}
	f.Add(tellingJPEG(f))
	f.Add(tellingHEIC(f))
	f.Fuzz(func(t *testing.T, data []byte) {
		clean, err := Photograph(data)
		if err != nil {
			if strings.Contains(err.Error(), "hidden facts (") || strings.ContainsAny(err.Error(), "\r\n") {
				t.Errorf("the program failed: %v", err)
			}
			return
		}
		if clean.Picture == nil || clean.Extension == "" {
			t.Error("a photograph without picture or kind")
		}
	})
}
