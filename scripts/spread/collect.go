package main

import (
	"context"
	"math"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/tables/sr"
)

// sample is a value of SR28 that states its own spread.
type sample struct {
	constituent constituent.ID
	group       string // of data/groups.csv
	amount      float64
	relative    float64 // sd/amount
	byRange     float64 // range/d₂(n)/amount; NaN if Min and Max are not stated
	rounding    float64 // half of the last decimal of the column
}

// The least that a row must have to be evidence.
const (
	leastN        = 3  // data points
	leastRounding = 20 // amount, in halves of the last decimal
)

// mainAcid names the fatty acid that stands for a class: its main member in
// most foods (columns of SR28).
var mainAcid = map[constituent.ID]constituent.ID{
	"sr:613": "FASAT", // 16:0
	"sr:617": "FAMS",  // 18:1
	"sr:618": "FAPU",  // 18:2
}

// collect reads the evidence of SR28.
func collect(ctx context.Context, folder string) ([]sample, error) {
	release, err := sr.Format.Open(ctx, folder, "")
	if err != nil {
		return nil, err
	}
	rounding := map[constituent.ID]float64{}
	known := map[constituent.ID]bool{}
	for _, c := range release.Columns {
		rounding[c.ID] = math.Pow10(-c.Decimals) / 2
		known[c.ID] = c.Constituent
	}
	divisor := divisors{}
	var all []sample
	for f, err := range release.Foods {
		if err != nil {
			return nil, err
		}
		if f.Group == "" || f.Group == "other" {
			continue
		}
		for _, v := range f.Values {
			id := v.Constituent
			if class, ok := mainAcid[id]; ok {
				id = class
			} else if !known[id] || id == "FASAT" || id == "FAMS" || id == "FAPU" {
				continue
			}
			h := rounding[v.Constituent]
			if v.State != estimate.Measured || v.N < leastN || !food.Stated(v.SD) || v.Amount < leastRounding*h {
				continue
			}
			s := sample{constituent: id, group: f.Group, amount: v.Amount, rounding: h, byRange: math.NaN()}
			s.relative = max(v.SD, h/math.Sqrt(3)) / v.Amount
			if food.Stated(v.Low) && food.Stated(v.High) && v.High > v.Low {
				s.byRange = (v.High - v.Low) / divisor.of(v.N) / v.Amount
				n := float64(v.N)
				if v.SD > (v.High-v.Low)/2*math.Sqrt(n/(n-1)) && v.SD > h {
					continue // it contradicts itself
				}
			}
			all = append(all, s)
		}
	}
	return all, nil
}

// divisors keeps the range divisors that were computed.
type divisors map[int]float64

func (d divisors) of(n int) float64 {
	if _, ok := d[n]; !ok {
		d[n] = estimate.RangeDivisor(n)
	}
	return d[n]
}
