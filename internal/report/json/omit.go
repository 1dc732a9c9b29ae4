package jsonreport

import (
	"io"

	"sipsum/internal/fit"
	"sipsum/internal/sheet"
	"sipsum/internal/tasting"
)

type omitDrink struct {
	Glasses int      `json:"glasses"`
	Rounds  number   `json:"times_the_file"`
	Build   []string `json:"build"`
}

type omitPot struct {
	Pot string   `json:"pot"`
	Was string   `json:"in_the_place_of"`
	By  []string `json:"pour"`
}

type omitUndone struct {
	Pot  string `json:"pot,omitempty"` // none: under finish
	Step string `json:"step"`
}

type omitServing struct {
	Order string   `json:"order"`
	Codes []string `json:"codes"`
}

type omitPanel struct {
	Tasters  int           `json:"tasters"`
	Right    *int          `json:"right"` // null: so few decide nothing
	Alpha    number        `json:"alpha"`
	Achieved number        `json:"alpha_achieved"`
	Finds    []tastingLine `json:"finds"`
}

type omitVerdict struct {
	Answers int      `json:"right_answers"`
	More    bool     `json:"more_than_chance"` // false is no proof that the drinks are the same
	ByLuck  number   `json:"by_luck"`
	Words   []string `json:"words"`
}

// Omitted writes sipsum.omit/1.
func Omitted(w io.Writer, o *sheet.Omitted) error {
	a, b := o.Rounds()
	var lines []string
	for _, l := range o.Lines {
		lines = append(lines, l.Path)
	}
	of := ""
	if o.Of != nil {
		of = string(o.Of.ID)
	}
	var verdict *omitVerdict
	if v := o.Verdict; v != nil {
		verdict = &omitVerdict{v.Answers, v.More, number(v.ByLuck), o.Verdicts()}
	}
	told := func(s *sheet.Sheet) (list []string) {
		for _, l := range s.Served().Allergens {
			list = append(list, l.Sentence())
		}
		return listed(list)
	}
	top := headOf("sipsum.omit/1", o.A)
	top.Contradicted = sheet.Contradictions(o.File)
	return write(w, struct {
		head
		Test      tasting.Test   `json:"test"`
		Omitted   string         `json:"omitted"`
		For       string         `json:"constituent,omitempty"`
		Lines     []string       `json:"lines_left_out"`
		Met       bool           `json:"matched"`
		Close     bool           `json:"closely"`
		Unmatched []string       `json:"not_matched"`
		Differs   []string       `json:"differs"` // of what nothing holds equal, by more than is noticed
		Unread    []string       `json:"read_again"`
		Targets   []fitTarget    `json:"targets"`
		Beside    []besideBody   `json:"serving"` // before: A, after: B
		A         omitDrink      `json:"a"`
		B         omitDrink      `json:"b"`
		GlassMl   number         `json:"glass_ml"`
		Pots      []omitPot      `json:"b_pots"`
		Undone    []omitUndone   `json:"b_steps_left_out"`
		Tell      []string       `json:"tell_tasters_before"` // of A
		TellB     []string       `json:"tell_tasters_before_b"`
		Cautions  []cautioned    `json:"cautions"`
		Even      bool           `json:"orders_even"`
		Orders    map[string]int `json:"orders"`
		Plan      []omitServing  `json:"plan"`
		Panel     omitPanel      `json:"panel"`
		Verdict   *omitVerdict   `json:"verdict"`
	}{
		top, o.Plan.Test, o.What, of, listed(lines), o.Met, o.Close, listed(o.Unmatched()), listed(o.Differs()), listed(o.Unread),
		each(o.Held, targetBody), each(o.Beside(), func(f sheet.FittedFigure) besideBody {
			return besideBody{f.Words, f.After.Unit, figureBody(f.Before), figureBody(f.After)}
		}),
		omitDrink{o.Plan.A, number(a), o.Pours(false)}, omitDrink{o.Plan.B, number(b), o.Pours(true)}, number(o.Plan.Each),
		each(o.Pots(), func(p sheet.OmittedPot) omitPot { return omitPot{p.Pot, p.Was, listed(p.By)} }),
		each(o.Undone, func(u fit.Undone) omitUndone { return omitUndone{u.Pot, u.Step} }), told(o.A), told(o.B),
		each(o.Cautions(), func(x sheet.Cautioned) cautioned { return cautioned(x.Caution) }), o.Plan.Even, o.Plan.Of,
		each(o.Plan.Servings, func(s tasting.Serving) omitServing { return omitServing(s) }),
		omitPanel{o.Panel.Tasters, some(o.Panel.Right), number(o.Panel.Alpha), number(o.Panel.Achieved), each(o.Panel.Lines, func(l tasting.Line) tastingLine {
			return tastingLine{number(l.Share), number(l.Power), some(l.First), some(l.Steady), l.Loses}
		})}, verdict,
	})
}
