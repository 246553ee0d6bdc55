package round

import (
	"math/rand/v2"
	"slices"

	"fyne.io/fyne/v2/lang"

	"ogive/imaging/rounds"
)

// Casebook is where a round's photographs can come from, beside phantoms.
type Casebook struct {
	Name string // for the reader
	// Photographs are those that a reference observer has marked.
	Photographs []rounds.Reference
	Library     rounds.Library
}

// UseCasebook offers the photographs of a casebook for rounds; nil offers phantoms
// only. Call it before Show.
func (r *Room) UseCasebook(c *Casebook) {
	r.casebook = c
	r.start.offerCasebook()
}

func (r *Room) library() rounds.Library {
	if r.casebook == nil {
		return nil
	}
	return r.casebook.Library
}

// words name the casebook among the pictures that can be chosen.
func (c *Casebook) words() string {
	return lang.L("{{.Name}} ({{.Number}})", map[string]any{"Name": c.Name, "Number": len(c.Photographs)})
}

// some are as many of the photographs as are wanted, others for another seed.
func (c *Casebook) some(count int, seed uint64) []rounds.Reference {
	all := slices.Clone(c.Photographs)
	rand.New(rand.NewPCG(seed, 0x9a7e)).Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
	return all[:min(count, len(all), rounds.MaxCount)]
}
