package fdc

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"sipsum/internal/food"
	"sipsum/internal/tables/table"
)

// jsonFood is a food of the JSON release; keys that are not here are not read.
type jsonFood struct {
	ID          uint32         `json:"fdcId"`
	NDB         uint32         `json:"ndbNumber"`
	Type        string         `json:"dataType"`
	Description string         `json:"description"`
	Latin       string         `json:"scientificName"`
	Published   string         `json:"publicationDate"` // month/day/year
	Category    jsonCategory   `json:"foodCategory"`
	Nutrients   []jsonNutrient `json:"foodNutrients"`
	Portions    []jsonPortion  `json:"foodPortions"`
}

type jsonCategory struct {
	Description string `json:"description"`
}

type jsonNutrient struct {
	ID       uint64 `json:"id"`
	Nutrient struct {
		ID     uint32 `json:"id"`
		Number string `json:"number"`
		Name   string `json:"name"`
		Unit   string `json:"unitName"`
	} `json:"nutrient"`
	Derivation struct {
		Code        string `json:"code"`
		Description string `json:"description"`
		Source      struct {
			Code        string `json:"code"`
			Description string `json:"description"`
		} `json:"foodNutrientSource"`
	} `json:"foodNutrientDerivation"`
	Amount *float64 `json:"amount"`
	Min    *float64 `json:"min"`
	Max    *float64 `json:"max"`
	LOQ    *float64 `json:"loq"`
	Points uint32   `json:"dataPoints"`
}

type jsonPortion struct {
	Amount *float64 `json:"amount"`
	Value  *float64 `json:"value"`
	Unit   struct {
		Name string `json:"name"`
	} `json:"measureUnit"`
	Modifier string   `json:"modifier"`
	Grams    *float64 `json:"gramWeight"`
}

// check refuses what no food can have.
func (f *jsonFood) check() error {
	if f.ID == 0 || f.Description == "" {
		return errors.New("the food has no fdcId or no description")
	}
	for _, text := range []string{f.Description, f.Latin, f.Category.Description, f.Type} {
		if strings.ContainsAny(text, "\x00\ufffd") {
			return fmt.Errorf("food %d has a text that is not UTF-8 or holds a zero byte", f.ID)
		}
	}
	for _, n := range f.Nutrients {
		for _, x := range []*float64{n.Amount, n.Min, n.Max, n.LOQ} {
			if x != nil && (*x < 0 || math.IsInf(*x, 0)) {
				return fmt.Errorf("food %d: nutrient %d is negative", f.ID, n.Nutrient.ID)
			}
		}
		if n.Nutrient.ID == 0 || n.Points > 1e9 {
			return fmt.Errorf("food %d has a nutrient without a number or with too many observations", f.ID)
		}
		if strings.ContainsAny(n.Nutrient.Name+n.Nutrient.Number+n.Nutrient.Unit+n.Derivation.Code+n.Derivation.Description+n.Derivation.Source.Code+n.Derivation.Source.Description, "\x00\ufffd") {
			return fmt.Errorf("food %d: nutrient %d has a text that is not UTF-8 or holds a zero byte", f.ID, n.Nutrient.ID)
		}
	}
	for _, p := range f.Portions {
		if p.Grams != nil && *p.Grams < 0 || strings.ContainsAny(p.Unit.Name+p.Modifier, "\x00\ufffd") {
			return fmt.Errorf("food %d has a portion with a negative weight or a damaged name", f.ID)
		}
	}
	return nil
}

// fromJSON makes a food.
func (a *assembler) fromJSON(in *jsonFood) (*food.Food, error) {
	f := table.NewFood(a.tableID, strconv.FormatUint(uint64(in.ID), 10))
	f.Names = []food.Name{{Language: "en", Text: in.Description}}
	f.PublisherGroup = in.Category.Description
	if in.Latin != "" {
		f.Names = append(f.Names, food.Name{Language: "la", Text: in.Latin})
	}
	f.Group = a.rules.Group(f.PublisherGroup, f.Name())
	var notes notes
	notes.add("Data type: ", strings.TrimSpace(in.Type+" "+isoDate(in.Published)))
	if in.NDB > 0 {
		notes.add(fmt.Sprintf("NDB number: %05d", in.NDB))
	}
	for _, p := range in.Portions {
		p.addTo(f)
	}
	a.values = a.values[:0]
	clear(a.seen)
	a.touched = a.touched[:0]
	for _, n := range in.Nutrients {
		if n.Amount == nil {
			continue
		}
		v := value{
			column:     a.columns.byID[strconv.FormatUint(uint64(n.Nutrient.ID), 10)],
			derivation: a.derivations.byID[n.Derivation.Code+" "+n.Derivation.Source.Code], points: int(n.Points),
			amount: *n.Amount, low: orNone(n.Min), high: orNone(n.Max), limit: orNone(n.LOQ), id: n.ID,
		}
		if a.seen[v.column] > 0 && a.values[a.seen[v.column]-1].id == v.id {
			return nil, fmt.Errorf("food %s has nutrient %d twice", f.ID.Code, n.Nutrient.ID)
		}
		if what := a.columns.list[v.column].cannotBe(v.amount); what != "" {
			return nil, fmt.Errorf("food %s, nutrient %d %s", f.ID.Code, n.Nutrient.ID, what)
		}
		text, err := a.add(f, &v)
		if err != nil {
			return nil, err
		}
		if text != "" {
			notes.add(text)
		}
	}
	a.give(f)
	f.Note = notes.String()
	return f, nil
}

func (p jsonPortion) addTo(f *food.Food) {
	if p.Grams == nil {
		return
	}
	words := []string{p.Unit.Name, p.Modifier}
	if p.Unit.Name == "undetermined" {
		words = words[1:]
	}
	for _, amount := range []*float64{p.Value, p.Amount} {
		if amount != nil && *amount != 1 {
			words = append([]string{plain(*amount)}, words...)
			break
		}
	}
	portion(f, food.Portion{Name: first(strings.TrimSpace(strings.Join(words, " ")), "portion"), Grams: *p.Grams, SD: food.None})
}

func orNone(x *float64) float64 {
	if x == nil {
		return food.None
	}
	return *x
}

// isoDate turns month/day/year around; a date that is not one is left out.
func isoDate(text string) string {
	date, err := time.Parse("1/2/2006", text)
	if err != nil {
		return ""
	}
	return date.Format(time.DateOnly)
}
