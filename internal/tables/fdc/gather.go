package fdc

import (
	"context"
	"fmt"
	"strings"
	"sync"

	"sipsum/internal/fail"
)

// The kinds of slips in the drawers.
const (
	ofValues byte = iota
	ofBrand
	ofPortion
	ofNote
	ofGroup
)

// gathered is what the files say of each food: its values, and the rest.
type gathered struct{ values, texts *drawers }

func (g gathered) close() {
	g.values.close()
	g.texts.close()
}

// gather reads all files but food.csv into drawers: the values beside the rest,
// since reading them takes the most time.
func (r *reader) gather(ctx context.Context) (gathered, error) {
	g := gathered{values: newDrawers(len(r.order.ids), r.held/2), texts: newDrawers(len(r.order.ids), r.held/2)}
	ctx, cancel := context.WithCancelCause(ctx)
	defer cancel(nil)
	var beside sync.WaitGroup
	beside.Go(func() {
		for _, read := range []func(context.Context, *drawers) error{r.gatherBrands, r.gatherPortions, r.gatherNotes} {
			if err := read(ctx, g.texts); err != nil {
				cancel(err)
				return
			}
		}
	})
	if err := r.gatherValues(ctx, g.values); err != nil {
		cancel(err)
	}
	beside.Wait()
	err := context.Cause(ctx)
	if err != nil {
		g.close()
	}
	return g, err
}

// filed gives a fault of the drawers the place of the row that filled them.
func (r *rows) filed(err error) error {
	if _, ours := err.(*fail.Error); err == nil || ours {
		return err
	}
	return fail.At(fail.Wrong, fail.Place{File: r.name, Line: r.line}, err.Error(), again)
}

// place finds the food that a row belongs to.
func (r *reader) place(in *rows, column int) (uint32, error) {
	id, err := in.key(column)
	if err != nil {
		return 0, err
	}
	place, ok := r.order.places[id]
	if !ok {
		return 0, in.wrong(column, fmt.Sprintf("food %d is not in %s", id, r.files.at[foodFile]))
	}
	return place, nil
}

// gatherBrands reads branded_food.csv; absent in releases of other foods.
func (r *reader) gatherBrands(ctx context.Context, d *drawers) error {
	return r.gatherTexts(ctx, d, brandedFile, ofBrand, headers[brandedFile], brandColumns[:])
}

// gatherPortions reads food_portion.csv.
func (r *reader) gatherPortions(ctx context.Context, d *drawers) error {
	return r.gatherTexts(ctx, d, portionFile, ofPortion, headers[portionFile], portionColumns[:])
}

// gatherTexts files some columns of each row as texts, in their order. The
// first is the food.
func (r *reader) gatherTexts(ctx context.Context, d *drawers, file string, kind byte, need, columns []string) error {
	if !r.files.has(file) {
		return nil
	}
	in, err := r.files.open(file, need...)
	if err != nil {
		return err
	}
	defer in.close()
	places := make([]int, len(columns))
	for i, c := range columns {
		places[i] = in.column(c)
	}
	check := portionChecks(in, kind)
	var body []byte
	return in.each(ctx, func() error {
		place, err := r.place(in, places[0])
		if err != nil {
			return err
		}
		if err := check(); err != nil || place == refused {
			return err
		}
		body = body[:0]
		for _, c := range places[1:] {
			text, err := in.text(c)
			if err != nil {
				return err
			}
			body = append(append(body, text...), separator)
		}
		return in.filed(d.put(place, kind, body))
	})
}

// separator stands after each text of a slip; no text has it.
const separator = 0

// portionChecks gives the check of the numbers in a row: those that become
// numbers of a food must be some.
func portionChecks(in *rows, kind byte) func() error {
	column := in.column("gram_weight")
	if kind == ofBrand {
		column = in.column("serving_size")
	}
	return func() error {
		_, err := in.number(column)
		return err
	}
}

// gatherNotes reads the lists that lead from a food to its code in older tables.
func (r *reader) gatherNotes(ctx context.Context, d *drawers) error {
	groups, err := r.lookup(ctx, surveyGroups, r.surveyGroupColumns()...)
	if err != nil {
		return err
	}
	for _, list := range []struct{ file, code, says string }{
		{legacyFile, "NDB_number", "NDB number"}, {foundationFile, "NDB_number", "NDB number"}, {surveyFile, "food_code", "FNDDS food code"},
	} {
		if !r.files.has(list.file) {
			continue
		}
		in, err := r.files.open(list.file, "fdc_id", list.code)
		if err != nil {
			return err
		}
		food, code, footnote := in.column("fdc_id"), in.column(list.code), in.column("footnote")
		group := max(in.column("wweia_category_code"), in.column("wweia_category_number"))
		err = in.each(ctx, func() error {
			place, err := r.place(in, food)
			if err != nil || place == refused {
				return err
			}
			text, err := in.texts(code, footnote, group)
			if err != nil {
				return err
			}
			if err := noteSlip(d, place, list.says, text[0]); err != nil {
				return in.filed(err)
			}
			if text[1] != "" {
				if err := d.put(place, ofNote, []byte(text[1])); err != nil {
					return in.filed(err)
				}
			}
			if row := groups.rows[text[2]]; len(row) > 0 {
				return in.filed(d.put(place, ofGroup, []byte(row[0])))
			}
			return nil
		})
		in.close()
		if err != nil {
			return err
		}
	}
	return nil
}

// surveyGroupColumns names the columns of wweia_food_category.csv, whose first
// has had two names.
func (r *reader) surveyGroupColumns() []string {
	cells := firstRow(r.files.fsys, r.files.at[surveyGroups])
	for _, c := range cells {
		if c == "wweia_food_category_code" {
			return []string{c, "wweia_food_category_description"}
		}
	}
	return []string{"wweia_food_category", "wweia_food_category_description"}
}

func noteSlip(d *drawers, place uint32, says, code string) error {
	if code == "" {
		return nil
	}
	if strings.HasPrefix(says, "NDB") && len(code) < 5 {
		code = strings.Repeat("0", 5-len(code)) + code
	}
	return d.put(place, ofNote, []byte(says+": "+code))
}
