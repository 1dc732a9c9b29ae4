package fdc

import (
	"context"
	"fmt"
	"hash/maphash"
	"io"
	"math"
	"strconv"

	"sipsum/internal/fail"
)

// refused stands for the place of a food that is not kept: a sample.
const refused = math.MaxUint32

// order is the foods of a release in order of first appearance.
type order struct {
	places map[uint32]uint32 // fdc_id: place, or refused
	ids    []uint32          // place: fdc_id
	prints []uint64          // place: hash of the row of food.csv, to tell a repetition from a contradiction
	latest string            // the last date of publication
}

// foodRows is food.csv by column.
type foodRows struct {
	*rows
	id, kind, called, category, published, latin int
}

func (f files) openFoods() (foodRows, error) {
	in, err := f.open(foodFile, headers[foodFile]...)
	if err != nil {
		return foodRows{}, err
	}
	return foodRows{
		rows: in, id: in.column("fdc_id"), kind: in.column("data_type"), called: in.column("description"),
		category: in.column("food_category_id"), published: in.column("publication_date"), latin: in.column("scientific_name"),
	}, nil
}

// orderOf reads which foods there are.
func (r *reader) orderOf(ctx context.Context) (*order, error) {
	o := &order{places: map[uint32]uint32{}}
	var err error
	if r.files.has(foodFile) {
		err = r.listFoods(ctx, o)
	} else {
		err = r.listOthers(ctx, o)
	}
	if err != nil {
		return nil, err
	}
	if len(o.ids) == 0 {
		return nil, fail.At(fail.Wrong, fail.Place{File: r.files.dir}, "holds no food", again)
	}
	return o, nil
}

// listFoods reads food.csv. A row that repeats another exactly is one food; one
// that contradicts it is an error.
func (r *reader) listFoods(ctx context.Context, o *order) error {
	in, err := r.files.openFoods()
	if err != nil {
		return err
	}
	defer in.close()
	seed := maphash.MakeSeed()
	return in.each(ctx, func() error {
		id, err := in.key(in.id)
		if err != nil {
			return err
		}
		var row maphash.Hash
		row.SetSeed(seed)
		for _, cell := range in.record {
			row.WriteString(cell)
			row.WriteByte(0)
		}
		place, again := o.places[id]
		switch {
		case again && place != refused && o.prints[place] != row.Sum64():
			return in.wrong(in.id, fmt.Sprintf("food %d stands twice, with different cells", id))
		case again:
			return nil
		case r.types[in.record[in.kind]]:
			o.places[id] = refused
			return nil
		}
		o.add(id)
		o.prints = append(o.prints, row.Sum64())
		if date, err := in.text(in.published); err != nil {
			return err
		} else if in.published >= 0 {
			o.dated(date)
		}
		return nil
	})
}

// listOthers is for a release without food.csv: the foods are those of the
// branded list, then those that only have values. Copies of the values that
// carry the names of the nutrients add what nutrient.csv lacks.
func (r *reader) listOthers(ctx context.Context, o *order) error {
	in, err := r.files.open(brandedFile, headers[brandedFile]...)
	if err != nil {
		return err
	}
	defer in.close()
	code, modified := in.column("fdc_id"), in.column("modified_date")
	err = in.each(ctx, func() error {
		id, err := in.key(code)
		if err != nil {
			return err
		}
		if _, twice := o.places[id]; twice {
			return in.wrong(code, fmt.Sprintf("food %d stands twice", id))
		}
		o.add(id)
		date, err := in.text(modified)
		o.dated(date)
		return err
	})
	if err != nil {
		return err
	}
	values, err := r.files.openValues()
	if err != nil {
		return err
	}
	defer values.close()
	return values.each(ctx, func() error {
		id, err := values.key(values.food)
		if err != nil {
			return err
		}
		if _, ok := o.places[id]; !ok {
			o.add(id)
		}
		return r.columns.learn(values)
	})
}

func (o *order) add(id uint32) {
	o.places[id] = uint32(len(o.ids))
	o.ids = append(o.ids, id)
}

// dated keeps the later of the dates written year-month-day.
func (o *order) dated(date string) {
	if len(date) == len("2019-04-01") && date > o.latest {
		o.latest = date
	}
}

// code gives the code of the food at a place.
func (o *order) code(place uint32) string { return strconv.FormatUint(uint64(o.ids[place]), 10) }

// lookEvery is how many rows are read before the context is asked again.
const lookEvery = 1 << 13

// each calls use for every row.
func (r *rows) each(ctx context.Context, use func() error) error {
	for n := 1; ; n++ {
		if n%lookEvery == 0 && ctx.Err() != nil {
			return ctx.Err()
		}
		if err := r.next(); err == io.EOF {
			return ctx.Err()
		} else if err != nil {
			return err
		}
		if err := use(); err != nil {
			return err
		}
	}
}
