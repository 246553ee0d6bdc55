package norms

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	"ogive/assets"
)

func TestTheProgramsOwnTableSurvivesWritingAndReading(t *testing.T) {
	want, err := Parse(assets.NormalValues)
	if err != nil {
		t.Fatal(err)
	}
	data, err := want.Encode()
	if err != nil {
		t.Fatal(err)
	}
	got, err := Parse(data)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Errorf("read back with differences (-written +read):\n%s", d)
	}
}

func TestAnEditedBandSurvivesWritingAndReading(t *testing.T) {
	table, err := Parse(assets.NormalValues)
	if err != nil {
		t.Fatal(err)
	}
	table.Bands[0].Low, table.Span.Fraction = 0.4321, 0
	data, err := table.Encode()
	if err != nil {
		t.Fatal(err)
	}
	got, err := Parse(data)
	if err != nil {
		t.Fatal(err)
	}
	if got.Bands[0].Low != 0.4321 || got.Span.Fraction != 0 {
		t.Errorf("read back low %v and tolerance %v", got.Bands[0].Low, got.Span.Fraction)
	}
}

func TestANumberThatIsNoneIsRefused(t *testing.T) {
	table := Table{Bands: []Band{{Low: math.NaN()}}}
	if data, err := table.Encode(); err == nil {
		t.Errorf("written as %s", data)
	}
}
