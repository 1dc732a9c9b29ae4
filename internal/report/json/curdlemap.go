package jsonreport

import (
	"sipsum/internal/chemistry"
	"sipsum/internal/curdling"
)

// curdleMap is where a drink with milk or plant protein stays smooth. Where why
// is there, there is no estimate, and reading is what to measure. doses
// and milks are times the sour and the milk part, milk_shares the latter's share of
// the mass; cells are by milk, then by dose; smooth is a chance from 0 to 1.
type curdleMap struct {
	Milk        []string        `json:"milk"`
	PourC       number          `json:"pour_c"`
	PourAssumed bool            `json:"pour_assumed,omitempty"`
	Why         string          `json:"why,omitempty"`
	Reading     string          `json:"reading,omitempty"`
	Estimate    *curdleEstimate `json:"estimate,omitempty"`
}

type curdleEstimate struct {
	Sour       string         `json:"sour"`
	Protein    string         `json:"protein"`
	CurdlingPH curdlingBand   `json:"curdling_ph"`
	PH         ph             `json:"ph"`
	MilkShare  number         `json:"milk_share"`
	Smooth     number         `json:"smooth"`
	Verdict    string         `json:"verdict"`
	Doses      []number       `json:"doses"`
	Milks      []number       `json:"milks"`
	MilkShares []number       `json:"milk_shares"`
	Cells      [][]curdleCell `json:"cells"`
	WaysOut    []wayOut       `json:"ways_out"`
}

type curdlingBand struct {
	Low    number `json:"low"`
	High   number `json:"high"`
	Source string `json:"source"`
}

type curdleCell struct {
	PH      number `json:"ph"`
	Smooth  number `json:"smooth"`
	Verdict string `json:"verdict"`
}

// wayOut is a change that keeps the drink smooth, a serving. grams are less of
// the sour part, or more of the milk part or the salt.
type wayOut struct {
	Change   string  `json:"change"`
	Grams    *number `json:"grams,omitempty"`
	Salt     string  `json:"salt,omitempty"`
	Additive string  `json:"additive,omitempty"`
	PourC    number  `json:"pour_c"`
	PH       number  `json:"ph"`
	Smooth   number  `json:"smooth"`
}

func curdleMapOf(c *curdling.Judgement) *curdleMap {
	if c == nil {
		return nil
	}
	out := &curdleMap{Milk: c.Milk, PourC: number(c.Celsius), PourAssumed: c.Assumed, Why: c.Why, Reading: c.Do}
	if c.Why != "" {
		return out
	}
	band := c.Stand.Curdling
	e := &curdleEstimate{
		Sour: c.Sour, Protein: c.Protein, CurdlingPH: curdlingBand{number(band.Low), number(band.High), band.Source},
		PH: ph{estimatedOf(chemistry.Estimate{Result: c.PH}), curdling.BenchCelsius}, MilkShare: number(c.Stand.MilkShare),
		Smooth: number(c.Stand.Smooth), Verdict: string(c.Stand.Verdict),
		Doses: numbersOf(c.Map.Doses), Milks: numbersOf(c.Map.Milks), MilkShares: numbersOf(c.Map.Shares), WaysOut: []wayOut{},
	}
	for _, row := range c.Map.Cells {
		cells := make([]curdleCell, 0, len(row))
		for _, cell := range row {
			cells = append(cells, curdleCell{number(cell.PH), number(cell.Smooth), string(cell.Verdict)})
		}
		e.Cells = append(e.Cells, cells)
	}
	for _, w := range c.Ways {
		e.WaysOut = append(e.WaysOut, wayOutOf(w))
	}
	out.Estimate = e
	return out
}

func wayOutOf(w curdling.Way) wayOut {
	out := wayOut{Change: string(w.Kind), PourC: number(w.Celsius), PH: number(w.PH), Smooth: number(w.Smooth)}
	if w.Kind != curdling.Cooler {
		grams := number(w.Grams)
		out.Grams = &grams
	}
	if w.Salt != nil {
		out.Salt, out.Additive = w.Salt.Name, w.Salt.Additive
	}
	return out
}

func numbersOf(list []float64) []number {
	out := make([]number, len(list))
	for i, x := range list {
		out[i] = number(x)
	}
	return out
}
