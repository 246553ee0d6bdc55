package casebook

import (
	"database/sql"
	"errors"
	"slices"
	"strings"

	"ogive/geometry/hand"
)

// Hands is which hands are affected.
type Hands string

// The affected hands.
const (
	LeftHand  Hands = "left"
	RightHand Hands = "right"
	BothHands Hands = "both"
)

// Kind is what is joined: skin alone or bone and nail too. Empty: not said.
type Kind string

// Kinds of join.
const (
	Simple  Kind = "simple"
	Complex Kind = "complex"
)

// Extent is how far the join goes. Empty: not said.
type Extent string

// Extents of a join.
const (
	Complete   Extent = "complete"
	Incomplete Extent = "incomplete"
)

// Join is one web that was joined at birth.
type Join struct {
	Hand     hand.Side
	Web      hand.Web
	Kind     Kind
	Extent   Extent
	Operated Date // the day of its operation; webs are often done in stages
}

// Case is one patient under a code.
type Case struct {
	ID       int64 // given by the casebook
	Code     string
	Born     Month
	Hand     Hands
	Joins    []Join
	Findings string // such as a missing phalanx
}

// Operated is the day of the first operation, empty if there was none.
func (c Case) Operated() Date {
	var first Date
	for _, j := range c.Joins {
		if j.Operated != "" && (first == "" || j.Operated < first) {
			first = j.Operated
		}
	}
	return first
}

func (c Case) check() error {
	if err := CheckCode(c.Code); err != nil {
		return err
	}
	if _, err := ParseMonth(string(c.Born)); err != nil {
		return err
	}
	if !slices.Contains([]Hands{LeftHand, RightHand, BothHands}, c.Hand) {
		return refuse("the affected hand is not said; give left, right or both")
	}
	for _, j := range c.Joins {
		if _, err := ParseDate(string(j.Operated)); err != nil {
			return err
		}
		switch {
		case j.Hand != hand.Left && j.Hand != hand.Right || !j.Web.Valid():
			return refuse("a join names no hand or no web; give both")
		case !slices.Contains([]Kind{"", Simple, Complex}, j.Kind):
			return refuse("%q is no kind of join; give simple or complex", j.Kind)
		case !slices.Contains([]Extent{"", Complete, Incomplete}, j.Extent):
			return refuse("%q is no extent of a join; give complete or incomplete", j.Extent)
		}
	}
	return checkRemark("the findings", c.Findings)
}

// words is all that a search looks through.
func (c Case) words() string {
	all := []string{c.Code, string(c.Hand), string(c.Born), c.Findings}
	for _, j := range c.Joins {
		all = append(all, j.Hand.String(), j.Web.String(), string(j.Kind), string(j.Extent), string(j.Operated))
	}
	return strings.ToLower(strings.Join(all, " "))
}

// AddCase adds a case and gives its ID. A code that is there already is refused.
func (b *Casebook) AddCase(c Case) (id int64, err error) {
	if err := c.check(); err != nil {
		return 0, err
	}
	err = b.change("the case can't be added", func(tx *sql.Tx) error {
		id, err = insertCase(tx, c)
		return err
	})
	return id, err
}

func insertCase(tx *sql.Tx, c Case) (int64, error) {
	if err := codeIsFree(tx, c); err != nil {
		return 0, err
	}
	done, err := tx.Exec("INSERT INTO cases(code,key,born,hand,findings,words) VALUES(?,?,?,?,?,?)",
		c.Code, strings.ToLower(c.Code), c.Born, c.Hand, c.Findings, c.words())
	if err != nil {
		return 0, err
	}
	if c.ID, err = done.LastInsertId(); err != nil {
		return 0, err
	}
	return c.ID, insertJoins(tx, c)
}

func codeIsFree(tx *sql.Tx, c Case) error {
	var other int64
	err := tx.QueryRow("SELECT id FROM cases WHERE key=? AND id<>?", strings.ToLower(c.Code), c.ID).Scan(&other)
	if errors.Is(err, sql.ErrNoRows) {
		return nil
	}
	if err != nil {
		return err
	}
	return refuse("there is a case %q already; open it, or choose another code", c.Code)
}

func insertJoins(tx *sql.Tx, c Case) error {
	for _, j := range c.Joins {
		_, err := tx.Exec("INSERT OR REPLACE INTO joins(case_id,hand,web,extent,kind,operated) VALUES(?,?,?,?,?,?)",
			c.ID, j.Hand.String(), int(j.Web), j.Extent, j.Kind, j.Operated)
		if err != nil {
			return err
		}
	}
	return nil
}

// ChangeCase writes what is known of the case with c.ID anew.
func (b *Casebook) ChangeCase(c Case) error {
	if err := c.check(); err != nil {
		return err
	}
	return b.change("the case can't be changed", func(tx *sql.Tx) error {
		if err := codeIsFree(tx, c); err != nil {
			return err
		}
		done, err := tx.Exec("UPDATE cases SET code=?,key=?,born=?,hand=?,findings=?,words=? WHERE id=?",
			c.Code, strings.ToLower(c.Code), c.Born, c.Hand, c.Findings, c.words(), c.ID)
		if err != nil {
			return err
		}
		if n, err := done.RowsAffected(); err != nil || n == 0 {
			return errors.Join(refuse("the case is not there any more; choose another"), err)
		}
		if _, err := tx.Exec("DELETE FROM joins WHERE case_id=?", c.ID); err != nil {
			return err
		}
		return insertJoins(tx, c)
	})
}

// Case is all that is known of the case.
func (b *Casebook) Case(id int64) (Case, error) {
	c := Case{ID: id}
	err := b.db.QueryRow("SELECT code,born,hand,findings FROM cases WHERE id=?", id).Scan(&c.Code, &c.Born, &c.Hand, &c.Findings)
	if errors.Is(err, sql.ErrNoRows) {
		return Case{}, refuse("the case is not there any more; choose another")
	}
	if err != nil {
		return Case{}, plain("the case can't be read", err)
	}
	c.Joins, err = rows(b.db, func(scan func(...any) error) (j Join, err error) {
		var side string
		if err = scan(&side, &j.Web, &j.Extent, &j.Kind, &j.Operated); err != nil {
			return j, err
		}
		j.Hand, err = hand.ParseSide(side)
		return j, err
	}, "SELECT hand,web,extent,kind,operated FROM joins WHERE case_id=? ORDER BY hand,web", id)
	return c, err
}

// Summary is a line in the list of cases.
type Summary struct {
	ID                    int64
	Code                  string
	Hand                  Hands
	Sittings, Photographs int
	Last                  Date // the latest sitting
}

// Cases is the cases by code that hold every word of the search in their code,
// findings, hands, webs or dates; all of them for an empty search.
func (b *Casebook) Cases(search string) ([]Summary, error) {
	where, args := "1", []any{}
	for _, w := range strings.Fields(strings.ToLower(search)) {
		where += " AND instr(c.words,?)>0"
		args = append(args, w)
	}
	return rows(b.db, func(scan func(...any) error) (s Summary, err error) {
		return s, scan(&s.ID, &s.Code, &s.Hand, &s.Sittings, &s.Photographs, &s.Last)
	}, `SELECT c.id, c.code, c.hand, count(s.id), coalesce(sum(s.n),0), coalesce(max(s.date),'')
	    FROM cases c LEFT JOIN (SELECT id, case_id, date,
	      (SELECT count(*) FROM photographs p WHERE p.sitting=sittings.id) AS n FROM sittings) s ON s.case_id=c.id
	    WHERE `+where+` GROUP BY c.id ORDER BY c.key`, args...)
}

// RemoveCase removes the case with its photographs and marks for good.
func (b *Casebook) RemoveCase(id int64) error {
	return b.remove("the case can't be removed",
		"SELECT p.hash FROM photographs p JOIN sittings s ON p.sitting=s.id WHERE s.case_id=?", "DELETE FROM cases WHERE id=?", id)
}
