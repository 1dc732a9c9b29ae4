package fdc

import (
	"context"
	"fmt"
	"math"
)

// valueRows is food_nutrient.csv by column.
type valueRows struct {
	*rows
	id, food, nutrient, amount, points, derivation, low, high, limit, footnote int
	nutrientName, nutrientUnit                                                 int // only in copies
}

func (f files) openValues() (valueRows, error) {
	in, err := f.open(valueFile, headers[valueFile]...)
	if err != nil {
		return valueRows{}, err
	}
	return valueRows{
		rows: in, id: in.column("id"), food: in.column("fdc_id"), nutrient: in.column("nutrient_id"), amount: in.column("amount"),
		points: in.column("data_points"), derivation: in.column("derivation_id"), low: in.column("min"), high: in.column("max"),
		limit: in.column("loq"), footnote: in.column("footnote"), nutrientName: in.column("name"), nutrientUnit: in.column("unit_name"),
	}, nil
}

// gatherValues reads food_nutrient.csv. Rows of one food that stand together
// are one slip.
func (r *reader) gatherValues(ctx context.Context, d *drawers) error {
	in, err := r.files.openValues()
	if err != nil {
		return err
	}
	defer in.close()
	var p packer
	var v value
	last, place := "", uint32(refused)
	flush := func() error {
		if len(p.bytes) == 0 {
			return nil
		}
		err := in.filed(d.put(place, ofValues, p.bytes))
		p.reset()
		return err
	}
	err = in.each(ctx, func() error {
		if code := in.record[in.food]; code != last {
			if err := flush(); err != nil {
				return err
			}
			if place, err = r.place(in.rows, in.food); err != nil {
				return err
			}
			last = code
		}
		given, err := r.value(in, &v)
		if err == nil && given && place != refused {
			p.put(&v)
		}
		return err
	})
	if err != nil {
		return err
	}
	return flush()
}

// value reads the current row; given is false if it has no amount.
func (r *reader) value(in valueRows, v *value) (given bool, err error) {
	var ok bool
	if v.column, ok = r.columns.find(in.record[in.nutrient]); !ok {
		return false, in.wrong(in.nutrient, fmt.Sprintf("nutrient %.40q is not in %s", in.record[in.nutrient], r.files.at[nutrientFile]))
	}
	v.derivation = 0
	if in.derivation >= 0 {
		if v.derivation, ok = r.derivations.find(in.record[in.derivation]); !ok {
			return false, in.wrong(in.derivation, fmt.Sprintf("derivation %.40q is not in %s", in.record[in.derivation], derivationFile))
		}
	}
	for _, field := range [...]struct {
		into   *float64
		column int
	}{{&v.amount, in.amount}, {&v.low, in.low}, {&v.high, in.high}, {&v.limit, in.limit}} {
		if *field.into, err = in.number(field.column); err != nil {
			return false, err
		}
	}
	points, err := in.whole(in.points)
	if err != nil {
		return false, err
	}
	if points > 1e9 {
		return false, in.wrong(in.points, "this is more observations than anybody has made")
	}
	v.points = int(points)
	if v.id, err = in.whole(in.id); err != nil {
		return false, err
	}
	if v.footnote, err = in.text(in.footnote); err != nil {
		return false, err
	}
	v.line = in.line
	// What a label makes in 100 g of its serving of a gram or two is often more than 100 g: of
	// branded foods that row alone is refused, when a drink takes it.
	if what := r.columns.list[v.column].cannotBe(v.amount); what != "" && !r.files.has(brandedFile) {
		return false, in.wrong(in.amount, fmt.Sprintf("%.40q %s", in.record[in.amount], what))
	}
	return !math.IsNaN(v.amount), nil
}
