package rounds

import (
	"bytes"
	"testing"
)

func TestThePictureMadeAheadIsTheOneTheRoundBeginsWith(t *testing.T) {
	settings := defaults(t)
	setup := Setup{Kind: ByEye, Count: 5, Seed: 3}
	first := MakeFirst(setup, settings)
	next := func(s Setup) (*Round, *Picture) {
		r := begin(t, s)
		r.Use(first)
		supply, err := r.Supply(t.Context(), settings, nil)
		if err != nil {
			t.Fatal(err)
		}
		defer supply.Close()
		p, err := supply.Next(t.Context())
		if err != nil {
			t.Fatal(err)
		}
		return r, p
	}
	r, p := next(setup)
	own, err := maker{r.Setup, r.Limits, r.drawn, settings, nil}.picture(0)
	if err != nil {
		t.Fatal(err)
	}
	if p != first.picture || !bytes.Equal(p.JPEG, own.JPEG) || p.Web != own.Web || len(p.Questions) != len(own.Questions) {
		t.Error("another picture was made ahead")
	}
	setup.Seed = 4
	if _, other := next(setup); other == first.picture {
		t.Error("a round of other pictures begins with it")
	}
}
