package casebook

import (
	"encoding/json"
	"fmt"

	"ogive/geometry/hand"
)

// exportForm is the form of exported cases that this program writes. It reads
// all up to it.
const exportForm = 2

// manifest is the table of contents of an exported case.
type manifest struct {
	Form        int               `json:"ogive_case"`
	Case        exportedCase      `json:"case"`
	Sittings    []exportedSitting `json:"sittings"`
	Photographs []exportedPhoto   `json:"photographs"`
	Marks       []exportedText    `json:"marks"`
	Plans       []exportedText    `json:"plans"`
	Appraisals  []exportedText    `json:"appraisals"`
}

type exportedCase struct {
	Code     string         `json:"code"`
	Born     Month          `json:"born,omitempty"`
	Hand     Hands          `json:"hand"`
	Joins    []exportedJoin `json:"joins"`
	Findings string         `json:"findings,omitempty"`
}

type exportedJoin struct {
	Hand     string `json:"hand"`
	Web      int    `json:"web"`
	Kind     Kind   `json:"kind,omitempty"`
	Extent   Extent `json:"extent,omitempty"`
	Operated Date   `json:"operated,omitempty"`
}

type exportedSitting struct {
	Date  Date   `json:"date"`
	Stage Stage  `json:"stage"`
	Note  string `json:"note,omitempty"`
}

type exportedPhoto struct {
	File     string `json:"file"`
	SHA256   string `json:"sha256"`
	Original string `json:"original_sha256"`
	Date     Date   `json:"date"` // of its sitting
	Hand     string `json:"hand,omitempty"`
	View     string `json:"view,omitempty"`
}

// exportedText is one revision of marks, a plan or an appraisal. It belongs to a
// photograph, or to the sitting on a date.
type exportedText struct {
	File       string `json:"file"`
	SHA256     string `json:"sha256"`
	Photograph string `json:"photograph_sha256,omitempty"`
	Sitting    Date   `json:"sitting,omitempty"`
	Observer   string `json:"observer"`
	Saved      string `json:"saved"`
	text       string
}

func exportCase(c Case) exportedCase {
	out := exportedCase{Code: c.Code, Born: c.Born, Hand: c.Hand, Joins: []exportedJoin{}, Findings: c.Findings}
	for _, j := range c.Joins {
		out.Joins = append(out.Joins, exportedJoin{j.Hand.String(), int(j.Web), j.Kind, j.Extent, j.Operated})
	}
	return out
}

func (e exportedCase) received() (Case, error) {
	c := Case{Code: e.Code, Born: e.Born, Hand: e.Hand, Findings: e.Findings}
	for _, j := range e.Joins {
		side, err := hand.ParseSide(j.Hand)
		if err != nil {
			return c, refuse("a join in the exported case is on the hand %.40q; ask for a new copy", j.Hand)
		}
		c.Joins = append(c.Joins, Join{Hand: side, Web: hand.Web(j.Web), Kind: j.Kind, Extent: j.Extent, Operated: j.Operated})
	}
	return c, c.check()
}

// check refuses what the program itself would not have taken in, wherever the
// case was written.
func (m manifest) check() error {
	for _, s := range m.Sittings {
		if err := properDay(s.Date); err != nil {
			return refuse("a sitting in the exported case has no proper date; ask for a new copy")
		}
		if err := s.Stage.check(); err != nil {
			return err
		}
		if err := checkRemark("the note of a sitting", s.Note); err != nil {
			return err
		}
	}
	for _, p := range m.Photographs {
		if err := p.check(); err != nil {
			return err
		}
	}
	return nil
}

func (p exportedPhoto) check() error {
	_, noSide := hand.ParseSide(p.Hand)
	_, noView := hand.ParseView(p.View)
	if properDay(p.Date) != nil || p.Hand != "" && noSide != nil || p.View != "" && noView != nil || !hash.MatchString(p.Original) {
		return refuse("%.80q in the exported case has no proper date, hand, view or origin; ask for a new copy", p.File)
	}
	return nil
}

// parseManifest reads the table of contents in any form up to the present one.
func parseManifest(data []byte) (m manifest, err error) {
	var head struct {
		Form int `json:"ogive_case"`
	}
	damaged := func(err error) error {
		return refuse("manifest.json in the exported case is damaged (%v); ask for a new copy", err)
	}
	if err := json.Unmarshal(data, &head); err != nil {
		return m, damaged(err)
	}
	switch head.Form {
	case 1:
		var old manifestForm1
		if err := json.Unmarshal(data, &old); err != nil {
			return m, damaged(err)
		}
		m = old.present()
	case exportForm:
		if err := json.Unmarshal(data, &m); err != nil {
			return m, damaged(err)
		}
	default:
		return m, refuse("the exported case is of form %d, this program reads form 1 to %d; use the program it was written with", head.Form, exportForm)
	}
	return m, m.check()
}

// manifestForm1 is how the first form was written: hands of joins as numbers, no
// plans and no appraisals.
type manifestForm1 struct {
	Case        Case
	Sittings    []Sitting
	Photographs []struct {
		File     string     `json:"file"`
		SHA256   string     `json:"sha256"`
		Original string     `json:"original_sha256"`
		About    Photograph `json:"about"`
	}
	Marks []exportedText
}

func (old manifestForm1) present() manifest {
	m := manifest{Form: exportForm, Case: exportCase(old.Case), Marks: old.Marks}
	for _, s := range old.Sittings {
		m.Sittings = append(m.Sittings, exportedSitting{Date: s.Date, Stage: s.Stage})
	}
	for _, p := range old.Photographs {
		m.Photographs = append(m.Photographs, exportedPhoto{p.File, p.SHA256, p.Original, p.About.Date, p.About.Hand, p.About.View})
	}
	return m
}

// number gives every text a file of its own.
func number(all []exportedText, kind string) {
	for i := range all {
		all[i].File = fmt.Sprintf("%s-%04d.json", kind, i+1)
	}
}
