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
	// Key tells this casebook from every other, such as a hash of its folder: a round
	// that was begun in one is not gone on with in another. Empty: not known.
	Key string
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

// library gives the photographs of a round, nil if its casebook is not the one that
// is open.
func (r *Room) library(of rounds.Setup) rounds.Library {
	if r.casebook == nil || of.Casebook != "" && of.Casebook != r.casebook.Key {
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
