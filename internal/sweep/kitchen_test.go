package sweep_test

import (
	"bytes"
	"cmp"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"sync"
	"testing"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/evidence"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/recipe"
	"sipsum/internal/report/json"
	"sipsum/internal/report/text"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
	"sipsum/internal/tables/core"
)

// draws of every run: enough for intervals, few enough for thousands of drinks.
const draws = 60

// kitchen is the core table in memory.
type kitchen struct {
	foods  map[food.ID]*food.Food
	list   []*food.Food // in the order of the table
	groups map[string][]*food.Food
	table  source.Table
	works  map[string]source.Work
}

// theKitchen is read once.
var theKitchen = sync.OnceValues(func() (*kitchen, error) {
	release, err := core.Format.Open(context.Background(), "", "")
	if err != nil {
		return nil, err
	}
	k := &kitchen{foods: map[food.ID]*food.Food{}, groups: map[string][]*food.Food{}, table: release.Table, works: map[string]source.Work{}}
	for f, err := range release.Foods {
		if err != nil {
			return nil, err
		}
		k.foods[f.ID], k.list = f, append(k.list, f)
		k.groups[f.Group] = append(k.groups[f.Group], f)
	}
	for _, w := range release.Works {
		k.works[w.ID] = w
	}
	return k, nil
})

func newKitchen(t testing.TB) *kitchen {
	t.Helper()
	k, err := theKitchen()
	if err != nil {
		t.Fatal(err)
	}
	return k
}

func (k *kitchen) Food(_ context.Context, id food.ID) (*food.Food, error) {
	if f, ok := k.foods[id]; ok {
		return f, nil
	}
	return nil, fail.New(fail.Wrong, "there is no food "+id.String(), "write another")
}

func (k *kitchen) Named(_ context.Context, name string) (food.ID, bool, error) {
	for _, f := range k.list {
		if f.Name() == name {
			return f.ID, true, nil
		}
	}
	return food.ID{}, false, nil
}

func (k *kitchen) Near(context.Context, string) []string { return nil }

func (k *kitchen) work(_, id string) (source.Work, bool) {
	w, ok := k.works[id]
	return w, ok
}

// in100 gives what a food's own table says of a constituent in 100 g, 0 if nothing.
func in100(f *food.Food, id string) float64 {
	for _, v := range f.Values {
		if string(v.Constituent) == id && v.Amount > 0 {
			return v.Amount
		}
	}
	return 0
}

// run calculates a drink file. The error is of the kind that a reader is shown.
func (k *kitchen) run(text string, o assaytest.Options) (*assay.Assay, error) {
	d, faults := drink.Parse("swept.drink.yaml", []byte(text), nil)
	o.Figures = evidence.Constituents(d)
	return assaytest.Run(context.Background(), d, faults, k, o)
}

// plan is a drink that was calculated, to be run again with other amounts.
func (k *kitchen) plan(text string, draws int) *assay.Plan {
	d, faults := drink.Parse("swept.drink.yaml", []byte(text), nil)
	r, err := recipe.Find(context.Background(), d, faults, k)
	if err != nil {
		panic(err)
	}
	return assay.Prepare(r, estimate.Ensemble{Seed: 1, N: draws + 1})
}

// subject is a drink with everything that is printed of it.
type subject struct {
	name, text string
	kitchen    *kitchen
	assay      *assay.Assay
	sheet      *sheet.Sheet
	pages      map[string]string         // of text, by view
	documents  map[string]map[string]any // of JSON, by view
	placed     []placed                  // the objects of the documents, once a law has asked for them
}

// refusal is a drink that the program refused, and how.
type refusal struct {
	name, text string
	err        error
}

// views are the forms in which a drink is printed.
var views = []struct {
	name string
	text func(io.Writer, *sheet.Sheet, textreport.Style) error
	json func(io.Writer, *sheet.Sheet) error
}{
	{"assay", textreport.Assay, jsonreport.Assay},
	{"brief", textreport.Brief, jsonreport.Brief},
	{"evidence", textreport.Evidence, jsonreport.Evidence},
	{"card", textreport.CardWorking, jsonreport.CardWorking},
	{"allergens", textreport.Allergens, jsonreport.Allergens},
	{"sheet", textreport.Sheet, nil}, // its document is made of the four others
}

// serve calculates a drink and prints it in every form. A panic is a refusal that
// breaks a law.
func (k *kitchen) serve(name, text string) (s *subject, refused *refusal) {
	defer func() {
		if p := recover(); p != nil {
			s, refused = nil, &refusal{name, text, fmt.Errorf("panic: %v", p)}
		}
	}()
	a, err := k.run(text, assaytest.Options{Draws: draws, Seed: 1, Want: assay.Want{Whole: true, Next: true}})
	if err != nil {
		return nil, &refusal{name, text, err}
	}
	s = &subject{name: name, text: text, kitchen: k, assay: a, pages: map[string]string{}, documents: map[string]map[string]any{}}
	if s.sheet, err = sheet.Build("sipsum", a, []source.Table{k.table}, k.work, []string{"eu", "us"}); err != nil {
		return nil, &refusal{name, text, fmt.Errorf("no sheet: %w", err)}
	}
	again := sheet.Again{Central: k.plan(text, 0), Drawn: k.plan(text, draws)}
	if err = sheet.Propose(context.Background(), s.sheet, again); err != nil {
		return nil, &refusal{name, text, fmt.Errorf("no change: %w", err)}
	}
	for _, v := range views {
		var page, document bytes.Buffer
		if err := v.text(&page, s.sheet, textreport.Style{}); err != nil {
			return nil, &refusal{name, text, fmt.Errorf("no page: %w", err)}
		}
		s.pages[v.name] = page.String()
		if v.json == nil {
			continue
		}
		if err := v.json(&document, s.sheet); err != nil {
			return nil, &refusal{name, text, fmt.Errorf("no document: %w", err)}
		}
		var parsed map[string]any
		if err := json.Unmarshal(document.Bytes(), &parsed); err != nil {
			return nil, &refusal{name, text, fmt.Errorf("the document is no JSON: %w", err)}
		}
		s.documents[v.name] = parsed
	}
	return s, nil
}

// proper tells what is wrong with a refusal: it has to be an error for people, with
// a place and something to do.
func (r *refusal) proper() string {
	var e *fail.Error
	switch {
	case strings.HasPrefix(r.err.Error(), "panic:"):
		return r.err.Error()
	case !errors.As(r.err, &e) || len(e.Faults) == 0:
		return "an error that is not for people: " + r.err.Error()
	case e.Exit != fail.Wrong:
		return fmt.Sprintf("exit code %d for a drink file", e.Exit)
	}
	for _, f := range e.Faults {
		if f.Place.Line == 0 || f.Do == "" || f.What == "" {
			return "no place or nothing to do: " + r.err.Error()
		}
	}
	return ""
}

// order is for maps: the sweep prints the same every time.
func order[K cmp.Ordered, V any](m map[K]V) []K {
	keys := make([]K, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}
