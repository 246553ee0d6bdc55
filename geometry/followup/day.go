package followup

import (
	"fmt"
	"time"
)

// Day is a day of the calendar, without hour or time zone.
// The zero Day stands for a day that is not known.
type Day struct {
	Year  int
	Month time.Month
	Day   int
}

// ParseDay reads a day written as 2026-03-01.
func ParseDay(s string) (Day, error) {
	t, err := time.Parse(time.DateOnly, s)
	if err != nil {
		return Day{}, fmt.Errorf("%q is no day; write it as 2026-03-01", s)
	}
	return dayOf(t), nil
}

// String is the day as ParseDay reads it, empty for the zero Day.
func (d Day) String() string {
	if d == (Day{}) {
		return ""
	}
	return d.midnight().Format(time.DateOnly)
}

// Before reports whether d comes before e.
func (d Day) Before(e Day) bool { return d.midnight().Before(e.midnight()) }

// Months is the time from one day to another in calendar months: the whole
// months, and of the month begun the fraction of its days. It is negative where
// to comes before from. From the 31st a month that has none ends on its last day.
func Months(from, to Day) float64 {
	if to.Before(from) {
		return -Months(to, from)
	}
	whole := (to.Year-from.Year)*12 + int(to.Month-from.Month)
	if to.Before(from.after(whole)) {
		whole--
	}
	begun, ends := from.after(whole), from.after(whole+1)
	return float64(whole) + begun.daysTo(to)/begun.daysTo(ends)
}

// after is the same day some months later, the last of the month where that
// month is shorter.
func (d Day) after(months int) Day {
	first := time.Date(d.Year, d.Month+time.Month(months), 1, 0, 0, 0, 0, time.UTC)
	last := first.AddDate(0, 1, -1).Day()
	return dayOf(first.AddDate(0, 0, min(d.Day, last)-1))
}

func (d Day) daysTo(e Day) float64 { return e.midnight().Sub(d.midnight()).Hours() / 24 }

func (d Day) midnight() time.Time { return time.Date(d.Year, d.Month, d.Day, 0, 0, 0, 0, time.UTC) }

func dayOf(t time.Time) Day {
	y, m, d := t.Date()
	return Day{Year: y, Month: m, Day: d}
}
