package main

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
)

// kin is foods that resemble each other, and the rows that say how.
type kin struct {
	name, class string
	names       []string
	rows        []row
}

// share is what the rows of a kin say of an acid.
type share struct {
	id        constituent.ID
	mean      float64
	sd        float64
	low, high float64 // 5 and 95 %; of an acid that no row holds: none and the most
	n         int     // rows that looked for it
}

// kinsOf reads data/kins.csv; what is listed as none has no rows.
func kinsOf(path string, rows map[string]row) ([]kin, error) {
	var list []kin
	var missing []string
	err := records(path, func(get func(string) string) {
		k := kin{name: get("kin"), class: get("class"), names: strings.Fields(get("rows"))}
		for _, name := range k.names {
			r, ok := rows[name]
			if !ok {
				missing = append(missing, k.name+": "+name)
			}
			k.rows = append(k.rows, r)
		}
		if len(k.rows) > 0 {
			list = append(list, k)
		}
	})
	if len(missing) > 0 {
		return nil, fmt.Errorf("no such rows: %s", strings.Join(missing, ", "))
	}
	return list, err
}

// without gives the kin without one of its rows.
func (k kin) without(i int) kin {
	k.names, k.rows = slices.Delete(slices.Clone(k.names), i, i+1), slices.Delete(slices.Clone(k.rows), i, i+1)
	return k
}

// means gives the mean shares of the acids that a row of the kin holds, in the order of the
// vocabulary, and the rest.
func (k kin) means() (list []share, rest float64) {
	sum := 0.0
	for _, c := range constituent.Sums().Leaves(constituent.OrganicAcids) {
		s := share{id: c.ID}
		var most []float64
		for _, r := range k.rows {
			x, _, high, looked := r.shareOf(c.ID)
			if !looked {
				continue
			}
			s.n++
			s.mean += x
			most = append(most, high)
		}
		if s.n == 0 {
			continue
		}
		s.mean /= float64(s.n)
		if s.mean == 0 {
			slices.Sort(most)
			s.high = most[len(most)/2]
		}
		sum += s.mean
		list = append(list, s)
	}
	for _, r := range k.rows {
		whole := r.rest
		for _, f := range r.acids {
			whole += f.amount
		}
		rest += r.rest / whole / float64(len(k.rows))
	}
	for i := range list { // an acid that one row alone looked for must not make the sum more than one
		list[i].mean /= max(sum+rest, 1)
	}
	return list, max(1-sum/max(sum+rest, 1), 0)
}

// spread gives f of a kin from its own rows and its degrees of freedom; ok is false of one
// row.
func (k kin) spread() (f float64, freedom int, ok bool) {
	n := len(k.rows)
	if n < 2 {
		return 0, 0, false
	}
	list, _ := k.means()
	apart, possible := 0.0, 0.0
	for _, s := range list {
		squares, rounded := 0.0, 0.0
		for _, r := range k.rows {
			if x, low, high, looked := r.shareOf(s.id); looked {
				squares += (x - s.mean) * (x - s.mean)
				rounded += (high - low) * (high - low) / 12 // rectangular: JCGM 100:2008, 4.3.7
			}
		}
		if s.n > 1 {
			apart += max(squares/float64(s.n-1)-rounded/float64(s.n), 0)
			possible += s.mean * (1 - s.mean)
		}
	}
	if possible == 0 {
		return 0, 0, false
	}
	return apart / possible, n - 1, true
}

// many is from how many rows on a kin says how wide kins are.
const many = 3

// borrowed is with how many degrees of freedom the usual f of kins counts in one: as many
// as a kin of four rows has of its own.
const borrowed = 3

// widths gives f of each kin.
func widths(kins []kin) []float64 {
	var own []float64
	widest := map[string]float64{}
	for _, k := range kins {
		if f, _, ok := k.spread(); ok && len(k.rows) >= many {
			own = append(own, f)
			widest[k.class] = max(widest[k.class], f)
			widest[""] = max(widest[""], f)
		}
	}
	slices.Sort(own)
	usual := own[len(own)/2]
	list := make([]float64, len(kins))
	for i, k := range kins {
		f, freedom, ok := k.spread()
		switch wide, known := widest[k.class]; {
		case ok:
			f = (f*float64(freedom) + usual*borrowed) / float64(freedom+borrowed)
		case known:
			f = max(wide, usual)
		default:
			f = widest[""]
		}
		list[i] = f * (1 + 1/float64(len(k.rows)))
	}
	return list
}

// shares gives the shares of a kin with their limits, and the rest as the last.
func (k kin) shares(f float64) []share {
	list, rest := k.means()
	list = append(list, share{id: constituent.RestOf(constituent.OrganicAcids), mean: rest, n: len(k.rows)})
	sum := make([]float64, draws+1)
	columns := make([][]float64, len(list))
	for i, s := range list {
		if s.mean == 0 {
			continue
		}
		list[i].sd = math.Sqrt(s.mean * (1 - s.mean) * f)
		columns[i] = make([]float64, draws+1)
		estimate.Input{Central: s.mean, Shape: estimate.Lognormal, SD: math.Sqrt(s.mean * f), Stream: estimate.KeyOf(1, k.name, string(s.id))}.Fill(columns[i])
		for d, x := range columns[i] {
			sum[d] += x
		}
	}
	for i, col := range columns {
		if col == nil {
			continue
		}
		for d := range col {
			col[d] /= sum[d]
		}
		limits := estimate.Summarise(col)
		list[i].low, list[i].high = limits.Low, limits.High
	}
	return list
}

// draws is how many draws the limits are read from.
const draws = 20000
