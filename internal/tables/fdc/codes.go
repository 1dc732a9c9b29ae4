package fdc

import (
	"context"
	"fmt"
	"strconv"
	"strings"

	"sipsum/internal/embedded"
	"sipsum/internal/source"
	"sipsum/internal/tables/table"
)

const (
	licence = "public domain (US Government work)"
	itself  = "fdc" // the work that stands for the release as a whole
)

// derivation is how values were arrived at.
type derivation struct {
	source, ref       string // as food.Value has them
	analysed, assumed bool
}

// derivations is what the rows of values may name. Place 0 is that of a row
// that names none.
type derivations struct {
	kinds   map[string]table.SourceKind
	list    []derivation
	byID    map[string]int
	closed  bool // the release lists all of them
	works   []source.Work
	isKnown map[string]bool // ids of works
	last    string          // what was found last, and where
	lastAt  int
}

// newDerivations knows the source codes of SR28, which the agency carried over,
// and no derivation but the blank one: that a value has observations and
// no derivation is how this agency writes plain analyses.
func newDerivations(edition string) *derivations {
	d := &derivations{kinds: table.SourceKinds("sr"), byID: map[string]int{"": 0}, isKnown: map[string]bool{}}
	d.list = append(d.list, derivation{source: itself, analysed: true})
	d.work(source.Work{ID: itself, Citation: citation(edition), Licence: licence})
	return d
}

func (d *derivations) work(w source.Work) {
	if !d.isKnown[w.ID] {
		d.isKnown[w.ID] = true
		d.works = append(d.works, w)
	}
}

// add adds a derivation; its source code may be empty.
func (d *derivations) add(id, code, meaning, sourceCode, sourceMeaning string) {
	kind := d.kinds[sourceCode]
	one := derivation{source: itself, ref: "deriv" + code, analysed: kind.Analysed, assumed: kind.Assumed || code == "Z"}
	if meaning == "" {
		meaning = "not described in the release"
	}
	d.work(source.Work{ID: one.ref, Citation: "USDA FoodData Central, derivation code " + code + ": " + meaning, Licence: licence})
	if sourceCode != "" {
		if sourceMeaning == "" {
			sourceMeaning = kind.Why
		}
		one.source = "src" + sourceCode
		d.work(source.Work{
			ID: one.source, Citation: "USDA FoodData Central, source code " + sourceCode + ": " + sourceMeaning,
			Licence: licence, Grade: kind.Grade, Note: kind.Why,
		})
	}
	d.byID[id] = len(d.list)
	d.list = append(d.list, one)
}

// find gives the place of the derivation that a row names. Where the release
// does not list them, one that nobody knows is kept by its number.
func (d *derivations) find(id string) (int, bool) {
	if id == d.last {
		return d.lastAt, true
	}
	place, ok := d.search(id)
	if ok {
		d.last, d.lastAt = strings.Clone(id), place
	}
	return place, ok
}

func (d *derivations) search(id string) (int, bool) {
	if place, ok := d.byID[id]; ok {
		return place, true
	}
	n, ok := wholeOf(id)
	if !ok {
		return 0, false
	}
	plain := strconv.FormatUint(n, 10)
	place, ok := d.byID[plain]
	switch {
	case ok && len(d.byID) < maxAliases:
		d.byID[strings.Clone(id)] = place
	case !ok && !d.closed && len(d.list) < maxAliases:
		d.byID[plain] = len(d.list)
		d.list = append(d.list, derivation{source: itself, ref: "derivation " + plain})
		return len(d.list) - 1, true
	}
	return place, ok
}

// maxAliases bounds what hostile files can make find remember.
const maxAliases = 10_000

// readDerivations reads the lists of the release, or sipsum's own short one of
// the derivations that could be told from a comparison with SR28.
func (r *reader) readDerivations(ctx context.Context) error {
	if !r.files.has(derivationFile) {
		for _, row := range embedded.Rows("maps/fdc_derivations.csv") {
			r.derivations.add(row.Text("id"), row.Text("code"), "", row.Text("source_code"), "")
		}
		return nil
	}
	sources, err := r.lookup(ctx, sourceFile, "id", "code", "description")
	if err != nil {
		return err
	}
	list, err := r.lookup(ctx, derivationFile, "id", "code", "description", "source_id")
	if err != nil {
		return err
	}
	for _, id := range list.order {
		row := list.rows[id]
		from := append(sources.rows[row[2]], "", "")
		r.derivations.add(id, row[0], row[1], from[0], from[1])
	}
	r.derivations.closed = true
	return nil
}

// dictionary is a small file: its first column leads to the others.
type dictionary struct {
	rows  map[string][]string
	order []string
}

// lookup reads a small file by some of its columns; an absent file is empty, and
// so is an absent column but the first two.
func (r *reader) lookup(ctx context.Context, file string, columns ...string) (dictionary, error) {
	d := dictionary{rows: map[string][]string{}}
	if !r.files.has(file) {
		return d, nil
	}
	in, err := r.files.open(file, columns[:2]...)
	if err != nil {
		return d, err
	}
	defer in.close()
	places := make([]int, len(columns))
	for i, c := range columns {
		places[i] = in.column(c)
	}
	err = in.each(ctx, func() error {
		row, err := in.texts(places...)
		if err != nil {
			return err
		}
		id := row[0]
		if _, twice := d.rows[id]; twice || id == "" {
			return in.wrong(places[0], fmt.Sprintf("%.40q is empty or stands twice", id))
		}
		if len(d.order) == maxAliases {
			return in.wrong(places[0], fmt.Sprintf("this list has more than %d rows", maxAliases))
		}
		d.rows[id] = row[1:]
		d.order = append(d.order, id)
		return nil
	})
	return d, err
}
