package casebook

import (
	"time"
)

// Date is a day, written 2026-03-01; empty if it is not known.
type Date string

// ParseDate reads a day written as 2026-03-01.
func ParseDate(s string) (Date, error) {
	if s == "" {
		return "", nil
	}
	t, err := time.Parse(time.DateOnly, s)
	if err != nil || t.Year() < 1900 {
		return "", refuse("%q is no date; write it as 2026-03-01", s)
	}
	return Date(s), nil
}

// DateOf is the day on the clock that t was read from.
func DateOf(t time.Time) Date {
	if t.IsZero() {
		return ""
	}
	return Date(t.Format(time.DateOnly))
}

// Time is midnight of that day, zero for no date.
func (d Date) Time() time.Time {
	t, err := time.Parse(time.DateOnly, string(d))
	if err != nil {
		return time.Time{}
	}
	return t
}

// Month is a month of birth, written 2021-07; empty if it is not known.
type Month string

// ParseMonth reads a month written as 2021-07. A full date of birth is refused:
// it could tell who the patient is, and the month is enough for the age.
func ParseMonth(s string) (Month, error) {
	if s == "" {
		return "", nil
	}
	if _, err := time.Parse(time.DateOnly, s); err == nil {
		return "", refuse("a full date of birth could tell who the patient is; give the month, %s, which is enough for the age", s[:7])
	}
	t, err := time.Parse("2006-01", s)
	if err != nil || t.Year() < 1900 {
		return "", refuse("%q is no month; write it as 2021-07", s)
	}
	return Month(s), nil
}
