package jsonreport

import (
	"io"

	"sipsum/internal/allergen"
	"sipsum/internal/caution"
	"sipsum/internal/fail"
	"sipsum/internal/sheet"
)

// declaration is what must be said of allergens, and what may hurt, under one set of
// rules.
type declaration struct {
	Rules       string          `json:"rules"`
	Contains    []allergenEntry `json:"contains"`
	MayContain  []allergenEntry `json:"may_contain"`
	NotDeclared []allergenEntry `json:"not_declared"`
	Excepted    []allergenEntry `json:"excepted"`
	Check       []check         `json:"check"`
	Ingredients ingredients     `json:"ingredients"`
	Cautions    []cautioned     `json:"cautions"`
}

type allergenEntry struct {
	Code      string      `json:"code"`
	Name      string      `json:"name"`
	From      []string    `json:"from"`
	Via       []string    `json:"via"`
	Ways      []way       `json:"ways"`
	Leaves    []string    `json:"leaves"`
	Knowledge []knowledge `json:"knowledge"`
	Note      string      `json:"note,omitempty"`
	Source    string      `json:"source"`
	Status    string      `json:"status"`
}

// way is how one food gets into the drink.
type way struct {
	Food string   `json:"food"`
	Via  []string `json:"via"`
}

type knowledge struct {
	Food  string             `json:"food"`
	Leaf  string             `json:"leaf"`
	How   allergen.Knowledge `json:"how"`
	Rules []string           `json:"rules,omitempty"`
}

type check struct {
	Code   string   `json:"code"`
	Leaf   string   `json:"leaf,omitempty"`
	Leaves []string `json:"leaves,omitempty"`
	Name   string   `json:"name,omitempty"`
	Foods  []string `json:"foods"`
	Places []string `json:"places,omitempty"`

	Question string `json:"question,omitempty"`
	Text     string `json:"text"`
	Answer   string `json:"answer,omitempty"`
	Source   string `json:"source,omitempty"`
}

type cautioned struct {
	Code    string `json:"code"`
	Text    string `json:"text"`
	Source  string `json:"source"`
	Because string `json:"because"`
	Who     string `json:"who,omitempty"`
	Rank    int    `json:"rank"`
	TooMuch string `json:"too_much,omitempty"` // of what surely more is in it than may be
}

// Allergens writes sipsum.allergens/1: the declaration under the first rules itself, those
// under further rules, and all of them alike, as in the document of the sheet.
func Allergens(w io.Writer, s *sheet.Sheet) error {
	all := declarationsOf(s)
	return write(w, struct {
		head
		declaration
		Further   []declaration `json:"further"`
		Allergens []declaration `json:"allergens"`
	}{headOf("sipsum.allergens/1", s), all[0], all[1:], all})
}

func declarationsOf(s *sheet.Sheet) []declaration { return declared(s.Allergens()) }

func declared(list []sheet.Declaration) []declaration {
	return each(list, func(d sheet.Declaration) declaration {
		return declaration{
			d.Rules, each(d.Contains, entryOf), each(d.MayContain, entryOf), each(d.NotDeclared, entryOf), each(d.Excepted, entryOf),
			each(d.Check, checkOf), ingredientsOf(d.Ingredients),
			each(d.Cautions, func(c caution.Caution) cautioned { return cautioned(c) }),
		}
	})
}

func entryOf(e allergen.Entry) allergenEntry {
	return allergenEntry{
		e.Code, e.Name, e.From, e.Via, each(e.Ways, func(w allergen.Way) way { return way(w) }), e.Leaves,
		each(e.Knowledge, func(k allergen.Evidence) knowledge { return knowledge(k) }), e.Note, e.Source, e.Status,
	}
}

func checkOf(c allergen.Check) check {
	return check{
		c.Code, c.Leaf, c.Leaves, c.Name, c.Foods, each(c.Places, fail.Place.String), c.Question, c.Text, c.Answer, c.Source,
	}
}
