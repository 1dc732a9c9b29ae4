package fdc

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strconv"

	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/tables/table"
)

const (
	foundationKey = "FoundationFoods"
	longestFood   = 16 << 20 // bytes: a food brings all its samples along
)

// openJSON goes through the file once to learn its nutrients and derivations.
func (r *reader) openJSON(ctx context.Context) (*table.Release, error) {
	latest, n := "", 0
	var err error
	r.derivations = newDerivations("")
	err = r.eachJSON(ctx, func(f *jsonFood) error {
		n++
		latest = max(latest, isoDate(f.Published))
		return r.learnJSON(f)
	})
	if err != nil {
		return nil, err
	}
	if n == 0 {
		return nil, fail.At(fail.Wrong, fail.Place{File: r.files.place(r.files.json)}, "holds no food", again)
	}
	r.derivations.works[0].Citation = citation(latest)
	return r.release(latest, func(yield func(*food.Food, error) bool) { r.foodsJSON(ctx, yield) })
}

// learnJSON adds the nutrients and derivations of a food that are new.
func (r *reader) learnJSON(f *jsonFood) error {
	for _, n := range f.Nutrients {
		code := strconv.FormatUint(uint64(n.Nutrient.ID), 10)
		if _, ok := r.columns.byID[code]; !ok {
			if what := r.columns.add(code, n.Nutrient.Number, n.Nutrient.Name, n.Nutrient.Unit); what != "" {
				return errors.New(what)
			}
		}
		d := n.Derivation
		if key := d.Code + " " + d.Source.Code; d.Code != "" && r.derivations.byID[key] == 0 {
			r.derivations.add(key, d.Code, d.Description, d.Source.Code, d.Source.Description)
		}
		if len(r.columns.list) > maxAliases || len(r.derivations.list) > maxAliases {
			return fmt.Errorf("more than %d nutrients or derivations", maxAliases)
		}
	}
	return nil
}

// foodsJSON is the stream.
func (r *reader) foodsJSON(ctx context.Context, yield func(*food.Food, error) bool) {
	seen := map[uint32]bool{}
	a := assembler{reader: r, seen: make([]int, len(r.columns.list))}
	err := r.eachJSON(ctx, func(in *jsonFood) error {
		if seen[in.ID] {
			return fmt.Errorf("food %d stands twice", in.ID)
		}
		seen[in.ID] = true
		f, err := a.fromJSON(in)
		if err == nil && !yield(f, nil) {
			err = errStopped
		}
		return err
	})
	if err != nil && !errors.Is(err, errStopped) {
		yield(nil, err)
	}
}

var errStopped = errors.New("nobody wants more foods")

// eachJSON calls use for each food of {"FoundationFoods": […]}; one is in
// memory at a time. Faults are placed where the food begins, or where the file
// is no JSON.
func (r *reader) eachJSON(ctx context.Context, use func(*jsonFood) error) error {
	name := r.files.json
	file, err := r.files.fsys.Open(name)
	if err != nil {
		return fail.At(fail.Wrong, fail.Place{File: r.files.place(name)}, "cannot be read: "+err.Error(), again)
	}
	defer file.Close()
	w := &watch{Reader: file, most: longestFood}
	d := json.NewDecoder(w)
	for _, want := range []json.Token{json.Delim('{'), foundationKey, json.Delim('[')} {
		token, err := d.Token()
		if err == nil && token != want {
			err = fmt.Errorf("%v stands where %v should be; of the JSON releases only that of the Foundation foods is read", token, want)
		}
		if err != nil {
			return r.wrongJSON(d.InputOffset(), err)
		}
	}
	for d.More() {
		if err := ctx.Err(); err != nil {
			return err
		}
		w.start = d.InputOffset()
		var f jsonFood
		err := d.Decode(&f)
		if err == nil {
			err = f.check()
		}
		if err == nil {
			err = use(&f)
		}
		if err != nil {
			return r.wrongJSON(w.start, err)
		}
	}
	w.start = d.InputOffset()
	for _, want := range []json.Token{json.Delim(']'), json.Delim('}')} {
		token, err := d.Token()
		if err == nil && token != want {
			err = fmt.Errorf("%v stands where %v should be", token, want)
		}
		if err != nil {
			return r.wrongJSON(d.InputOffset(), err)
		}
	}
	if _, err := d.Token(); err != io.EOF {
		return r.wrongJSON(d.InputOffset(), errors.New("something follows the end of the release"))
	}
	return nil
}

// wrongJSON gives an error its place; those that have one, and those that are
// no fault of the file, stay as they are.
func (r *reader) wrongJSON(offset int64, err error) error {
	var placed *fail.Error
	if errors.As(err, &placed) || errors.Is(err, errStopped) || errors.Is(err, context.Canceled) {
		return err
	}
	what := err.Error()
	var kind *json.UnmarshalTypeError
	switch {
	case errors.As(err, &kind):
		what = fmt.Sprintf("%s holds %s, which it cannot", first(kind.Field, "the food"), kind.Value)
	case errors.Is(err, io.ErrUnexpectedEOF) || errors.Is(err, io.EOF):
		what = "the file ends in the middle: it may be cut off"
	case errors.Is(err, errLong):
		what = fmt.Sprintf("the food that begins here is longer than %d bytes", longestFood)
	}
	at := fail.Place{File: r.files.place(r.files.json)}
	at.Line, at.Col = r.files.lineOf(r.files.json, offset)
	return fail.At(fail.Wrong, at, what, again)
}
