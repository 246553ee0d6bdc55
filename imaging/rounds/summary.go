package rounds

import (
	"math"
	"slices"

	"ogive/geometry/scoring"
)

// Summary is what a round comes to. It is made of the answers given so far.
type Summary struct {
	Kind     Kind
	Done, Of int
	// Score is the part of all answers that counted which are right, By the same
	// for each question that was asked.
	Score scoring.Share
	By    []Tally
	// Confusions are what was taken for what, for each question with choices.
	Confusions []Mistaken
	Crowns     Crowns
	// Landmarks and Figures are those of blind rounds.
	Landmarks []Scatter
	Figures   []Scatter
	// Sentences say what to take home, the most useful first.
	Sentences []string
}

// Tally is the score of one question.
type Tally struct {
	Of    Asked
	Share scoring.Share
}

// Crowns is which way and how widely the crowns are off, in millimetres. By eye
// they are off only beyond where a normal crown may lie; blind, from the true
// crown. Crowns of one picture count as one, being placed with the same eye at the
// same time.
type Crowns struct {
	Distal, Ulnar scoring.Bias
	// Along and Aside are on which side they lie: distal and ulnar are above.
	Along, Aside scoring.Lean
	// Spread is the standard deviation along the axis about the bias, NaN of fewer
	// than two pictures.
	Spread float64
}

// Scatter is how far one kind of landmark (in millimetres) or one figure (in its
// unit) is off. Distal is the bias along the digit, of a figure its bias; Ulnar is
// sideways, and without values for a figure.
type Scatter struct {
	Of            string
	N             int
	Distal, Ulnar scoring.Bias
	// Error is the technical error against the truth: the root mean square of the
	// misses, sideways and along together.
	Error float64
}

// Summary of the answers so far.
func (r *Round) Summary() Summary {
	s := Summary{Kind: r.Setup.Kind, Crowns: crownsOf(r.Results)}
	s.Done, s.Of = r.Progress()
	right, counted := 0, 0
	for _, result := range r.Results {
		a, b := result.right()
		right, counted = right+a, counted+b
	}
	s.Score = scoring.ShareOf(right, counted)
	for _, of := range AllAsked {
		s.add(of, r.Results)
	}
	s.Landmarks, s.Figures = landmarkScatter(r.Results), figureScatter(r.Results)
	s.Sentences = s.sentences()
	return s
}

// add adds one question, if it was asked.
func (s *Summary) add(of Asked, results []Result) {
	right, counted := 0, 0
	names := findings[of]
	if of == Shape {
		names = shapeNames()
	}
	mistaken := Mistaken{of, scoring.NewConfusion(names...)}
	for _, result := range results {
		for _, j := range result.Judged {
			if j.Of != of || !j.Counted {
				continue
			}
			counted++
			if j.Right {
				right++
			}
			given := j.Given
			if slices.Contains(j.Also, given) {
				given = j.True // what the truth's own doubt allows is no confusion
			}
			mistaken.Add(j.True, given)
		}
	}
	if counted == 0 {
		return
	}
	s.By = append(s.By, Tally{of, scoring.ShareOf(right, counted)})
	if of != Crown {
		s.Confusions = append(s.Confusions, mistaken)
	}
}

// crownsOf gathers the crowns, the mean of each picture.
func crownsOf(results []Result) Crowns {
	var distal, ulnar []float64
	for _, r := range results {
		d, u, n := 0.0, 0.0, 0
		for _, j := range r.Judged {
			if j.Of == Crown && j.Off != nil {
				d, u, n = d+float64(j.Off.Distal), u+float64(j.Off.Ulnar), n+1
			}
		}
		if n > 0 {
			distal, ulnar = append(distal, d/float64(n)), append(ulnar, u/float64(n))
		}
	}
	c := Crowns{
		Distal: scoring.BiasOf(distal), Ulnar: scoring.BiasOf(ulnar),
		Along: scoring.LeanOf(distal, least), Aside: scoring.LeanOf(ulnar, least), Spread: math.NaN(),
	}
	if len(distal) > 1 {
		c.Spread = scoring.SD(distal)
	}
	return c
}

// landmarkScatter gathers the landmarks by kind.
func landmarkScatter(results []Result) []Scatter {
	var list []Scatter
	for _, kind := range landmarkKinds {
		var distal, ulnar, sizes []float64
		for _, r := range results {
			for _, l := range r.Landmarks {
				if l.Kind == kind {
					distal, ulnar = append(distal, float64(l.Distal)), append(ulnar, float64(l.Ulnar))
					sizes = append(sizes, float64(l.Size()))
				}
			}
		}
		if len(sizes) > 0 {
			list = append(list, Scatter{kind, len(sizes), scoring.BiasOf(distal), scoring.BiasOf(ulnar), scoring.RootMeanSquare(sizes)})
		}
	}
	return list
}

// figureScatter gathers the figures by name.
func figureScatter(results []Result) []Scatter {
	var list []Scatter
	for _, of := range []string{placeFigure, widthFigure, slopeFigure} {
		var misses []float64
		for _, r := range results {
			for _, f := range r.Figures {
				if f.Figure == of {
					misses = append(misses, f.Got-f.True)
				}
			}
		}
		if len(misses) > 0 {
			list = append(list, Scatter{of, len(misses), scoring.BiasOf(misses), scoring.BiasOf(nil), scoring.RootMeanSquare(misses)})
		}
	}
	return list
}

// landmarkKinds are the joints of the back of the hand, the creases of the palm and
// the crown.
var landmarkKinds = []string{"MCP", "PIP", "DIP", "tip", "basal digital crease", "PIP crease", crownKind}
