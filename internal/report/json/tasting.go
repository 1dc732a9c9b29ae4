package jsonreport

import (
	"io"

	"sipsum/internal/tasting"
)

type tastingLine struct {
	Share  number `json:"share"`
	Power  number `json:"power"`
	First  *int   `json:"tasters"`        // the first number that reaches the power wanted; null: none does
	Steady *int   `json:"tasters_steady"` // from which on it is not lost again
	Loses  bool   `json:"one_more_loses"`
}

// Tasting writes sipsum.tasting/1.
func Tasting(w io.Writer, program string, p tasting.Panel) error {
	return write(w, struct {
		Schema   string        `json:"schema"`
		Program  string        `json:"program"`
		Test     tasting.Test  `json:"test"`
		Tasters  int           `json:"tasters"`
		Right    *int          `json:"right"` // null: so few decide nothing
		Alpha    number        `json:"alpha"`
		Achieved number        `json:"alpha_achieved"`
		Chance   number        `json:"chance"`
		Wanted   number        `json:"power_wanted"`
		Finds    []tastingLine `json:"finds"`
	}{
		"sipsum.tasting/1", program, p.Test, p.Tasters, some(p.Right), number(p.Alpha), number(p.Achieved), number(p.Test.Chance()), number(p.Wanted),
		each(p.Lines, func(l tasting.Line) tastingLine {
			return tastingLine{number(l.Share), number(l.Power), some(l.First), some(l.Steady), l.Loses}
		}),
	})
}

// some gives a number of which 0 means that there is none.
func some(n int) *int {
	if n == 0 {
		return nil
	}
	return &n
}
