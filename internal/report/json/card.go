package jsonreport

import (
	"io"

	"sipsum/internal/label"
	"sipsum/internal/sheet"
)

// card is a nutrition declaration under one set of rules.
type card struct {
	Rules          string      `json:"rules"`
	Basis          string      `json:"basis"`
	Columns        []string    `json:"columns"` // in the order in which the rules print them
	ServingG       float64     `json:"serving_g"`
	ServingMl      float64     `json:"serving_ml,omitempty"`
	ServingsLine   string      `json:"servings_line,omitempty"`
	Shape          string      `json:"shape,omitempty"`
	Rows           []cardRow   `json:"rows"`
	NotSignificant []string    `json:"not_significant,omitempty"`
	Statements     []cardText  `json:"statements"`
	Claims         []cardClaim `json:"claims"`
	Notes          []cardNote  `json:"notes"`
	Unverified     []cardOpen  `json:"unverified,omitempty"`
}

// cardOpen is a cell of the rules that is to be read in the official text before use.
type cardOpen struct {
	Cell   string `json:"cell"`
	Source string `json:"source"`
}

type cardRow struct {
	Key        string    `json:"key"`
	Label      string    `json:"label"`
	Indent     int       `json:"indent"`
	Tag        string    `json:"tag"`
	Line       string    `json:"line,omitempty"`
	Per100ml   *cardCell `json:"per_100_ml,omitempty"`
	Per100g    *cardCell `json:"per_100_g,omitempty"`
	Serving    *cardCell `json:"serving"`
	Source     string    `json:"source"`
	Status     string    `json:"status"`
	FromMemory bool      `json:"from_memory,omitempty"`
	Incomplete bool      `json:"incomplete,omitempty"`
	Unknown    bool      `json:"unknown,omitempty"`  // what it prints is no figure
	LeftOut    bool      `json:"left_out,omitempty"` // the simplified table is without it
}

// cardCell is label.Cell: value is not rounded and null where nothing is known, most
// stands where something is missing.
type cardCell struct {
	Value      *float64 `json:"value"`
	Kcal       *float64 `json:"kcal,omitempty"`
	Most       *float64 `json:"most,omitempty"`
	Printed    string   `json:"printed"`
	Reference  string   `json:"reference,omitempty"`
	DailyValue string   `json:"daily_value,omitempty"`
}

type cardText struct {
	Text       string `json:"text"`
	Source     string `json:"source"`
	Status     string `json:"status"`
	FromMemory bool   `json:"from_memory,omitempty"`
}

type cardClaim struct {
	Claim      string `json:"claim"`
	Allowed    bool   `json:"allowed"`
	Why        string `json:"why"`
	Short      string `json:"-"`
	Verdict    string `json:"verdict"`
	Near       bool   `json:"near,omitempty"`
	Implied    bool   `json:"implied,omitempty"`
	Disclosure string `json:"disclosure,omitempty"`
	Status     string `json:"status,omitempty"`
	Source     string `json:"source,omitempty"`
}

type cardNote struct {
	Kind       string `json:"kind"`
	Row        string `json:"row,omitempty"`
	Text       string `json:"text"`
	Source     string `json:"source,omitempty"`
	Status     string `json:"status,omitempty"`
	FromMemory bool   `json:"from_memory,omitempty"`
}

// cardBody is what stands in a document of cards: the first card itself, those under
// further rules, and all of them alike, as in the document of the sheet.
type cardBody struct {
	card
	Further []card `json:"further"`
	Cards   []card `json:"cards"`
}

// Card writes sipsum.card/1.
func Card(w io.Writer, s *sheet.Sheet) error {
	return write(w, struct {
		head
		cardBody
	}{headOf("sipsum.card/1", s), cardBodyOf(s)})
}

// CardWorking writes sipsum.card/1 with "workings": how each figure of each card
// came about, in the order of the rules.
func CardWorking(w io.Writer, s *sheet.Sheet) error {
	return write(w, struct {
		head
		cardBody
		Workings [][]working `json:"workings"`
	}{headOf("sipsum.card/1", s), cardBodyOf(s), workingsOf(s.Workings())})
}

func cardBodyOf(s *sheet.Sheet) cardBody {
	all := cardsOf(s.Cards())
	return cardBody{all[0], all[1:], all}
}

func cardsOf(list []label.Card) []card {
	return each(list, func(c label.Card) card {
		return card{
			c.Rules, c.Basis, c.Columns, c.ServingG, c.ServingMl, c.ServingsLine, c.Shape, each(c.Rows, rowOf), c.NotSignificant,
			each(c.Statements, func(t label.Text) cardText { return cardText(t) }),
			each(c.Claims, func(k label.Claim) cardClaim { return cardClaim(k) }),
			each(c.Notes, func(n label.Note) cardNote { return cardNote(n) }),
			each(c.Unverified, func(o label.Open) cardOpen { return cardOpen(o) }),
		}
	})
}

func rowOf(r label.Row) cardRow {
	return cardRow{
		r.Key, r.Label, r.Indent, r.Tag, r.Line, (*cardCell)(r.Per100ml), (*cardCell)(r.Per100g), (*cardCell)(r.Serving),
		r.Source, r.Status, r.FromMemory, r.Incomplete, r.Unknown, r.LeftOut,
	}
}

// each turns every element of a list into its form; of none it gives an empty list, never
// null.
func each[D, J any](list []D, form func(D) J) []J {
	out := make([]J, len(list))
	for i, x := range list {
		out[i] = form(x)
	}
	return out
}
