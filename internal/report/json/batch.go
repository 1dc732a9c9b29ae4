package jsonreport

import (
	"io"

	"sipsum/internal/batch"
	"sipsum/internal/sheet"
)

type batchBody struct {
	Serves    number        `json:"serves"`
	MassG     number        `json:"mass_g"`
	ServingG  number        `json:"serving_g"`
	Rounds    number        `json:"rounds"` // how often the build is made as the file writes it
	Buy       []purchase    `json:"buy"`
	Unmade    []string      `json:"unmade"` // components for a garnish alone, of which nothing is worked out
	Costs     []costOf      `json:"costs"`  // of what has a price
	Pots      []pot         `json:"pots"`   // in the order of making
	Build     []pourOf      `json:"build"`
	Garnish   []pourOf      `json:"garnish"`
	Finish    []moveOf      `json:"finish"`
	Charges   []chargeOf    `json:"charges"`
	Rounding  roundingOf    `json:"rounding"`
	Precision precisionOf   `json:"precision"`
	Contains  []string      `json:"contains"`
	May       []string      `json:"may_contain"`
	Check     []string      `json:"check"` // what somebody has to find out
	Cautions  []cautionedOf `json:"cautions"`
}

type purchase struct {
	Food     string   `json:"food"`
	Name     string   `json:"name"`
	WeighedG number   `json:"weighed_g"`
	BoughtG  number   `json:"bought_g"`
	Edible   number   `json:"edible"`    // null: nobody states a share
	VolumeML number   `json:"volume_ml"` // null: nobody states a density
	Pieces   number   `json:"pieces"`    // null: nobody weighs one
	Piece    string   `json:"piece,omitempty"`
	US       string   `json:"us,omitempty"`
	Of       []partOf `json:"of"`
	Packs    number   `json:"packs,omitempty"`
	Pack     string   `json:"pack,omitempty"`
	Lot      string   `json:"lot,omitempty"`
	Best     string   `json:"best,omitempty"`
	Reread   []string `json:"read_again,omitempty"` // pots, with another lot
	Form     string   `json:"form,omitempty"`       // as it is sold without what nobody eats
	WholeG   number   `json:"whole_g,omitempty"`    // with that
	Past     bool     `json:"past,omitempty"`       // best before a day that is over
	Late     []lateOf `json:"late,omitempty"`       // pots that would keep for longer than it
}

type lateOf struct {
	Pot   string `json:"pot"`
	UseUp number `json:"used_up_by_day"`
}

type costOf struct {
	Currency string `json:"currency"`
	Serve    number `json:"serve"`  // as much of each pack as is used
	Outlay   number `json:"outlay"` // whole packs
}

type partOf struct {
	Pot      string `json:"pot"` // "": the drink
	WeighedG number `json:"weighed_g"`
}

type pot struct {
	Name    string      `json:"name"`
	Times   number      `json:"times"`
	Whole   *wholeOf    `json:"whole"`          // null: in one pot
	Shot    *shotOf     `json:"shot,omitempty"` // it is pulled with each glass
	Ahead   number      `json:"days_ahead"`
	Cut     bool        `json:"days_cut,omitempty"` // a code allows fewer days than the file says
	Glass   bool        `json:"with_each_glass"`
	InG     number      `json:"in_g"`
	OutG    number      `json:"out_g"`
	NeededG number      `json:"needed_g"`
	LeftG   number      `json:"left_g"`
	Lines   []weighedOf `json:"lines"`
	Steps   []moveOf    `json:"steps"`
}

type wholeOf struct {
	Of      string `json:"of"`
	Kept    bool   `json:"kept"`
	Glasses number `json:"glasses"` // that one serves, if it does not keep; 0: it goes into other pots
}

type shotOf struct {
	Grams   number `json:"grams"`
	Count   number `json:"count"`
	Glasses number `json:"glasses"` // that one fills; 0: it goes into other pots
}

type weighedOf struct {
	Path    string `json:"path"`
	Name    string `json:"name"`
	Food    string `json:"food,omitempty"`
	Exact   number `json:"exact"` // in unit; null: it is counted, or dosed to a reading
	Rounded number `json:"rounded"`
	Unit    string `json:"unit,omitempty"`
	Count   number `json:"count,omitempty"`
	Portion string `json:"portion,omitempty"`
	Grams   number `json:"grams"`
	Step    number `json:"weigh_to"` // g or ml; 0: nobody weighs it, or finer than scales are
	Bound   string `json:"bound,omitempty"`
	Finer   bool   `json:"finer,omitempty"`        // no scale is fine enough
	Coarse  bool   `json:"scale_coarse,omitempty"` // the bar's is not
	Text    string `json:"text"`
}

type pourOf struct {
	Serve weighedOf `json:"serve"`
	All   weighedOf `json:"all"`
}

type moveOf struct {
	Path    string      `json:"path"`
	Kind    string      `json:"kind"`
	Lines   []weighedOf `json:"lines"`
	Amounts []weighedOf `json:"amounts"`
	Text    string      `json:"text"`
}

type chargeOf struct {
	Of      string `json:"of"` // "": the drink
	Bottle  string `json:"bottle"`
	Gas     string `json:"gas"`
	OfGas   string `json:"of_gas"`
	Count   number `json:"count"`
	Glasses number `json:"glasses"`
}

type roundingOf struct {
	Figure string `json:"figure,omitempty"`
	Share  number `json:"share"`
	PH     number `json:"ph"`
	Undone string `json:"undone,omitempty"` // why it cannot be made with what the bar's scale shows
}

type precisionOf struct {
	Bands  []bandOf `json:"bands"`
	Share  number   `json:"share"`  // of itself, by which no amount is off
	Inside number   `json:"inside"` // null: there is no band
	First  string   `json:"first,omitempty"`
	Draws  int      `json:"draws"`
}

type bandOf struct {
	Name   string `json:"name"`
	Share  number `json:"share"` // 0: it holds or does not
	Source string `json:"source,omitempty"`
}

type cautionedOf struct {
	Code   string `json:"code"`
	Text   string `json:"text"`
	Source string `json:"source"`
}

// Batch writes sipsum.batch/1. With kitchen the purchases have a US kitchen's measures too.
func Batch(w io.Writer, s *sheet.Sheet, b *batch.Batch, kitchen bool) error {
	return write(w, struct {
		head
		batchBody
	}{headOf("sipsum.batch/1", s), batchOf(s, b, kitchen)})
}

func batchOf(s *sheet.Sheet, b *batch.Batch, kitchen bool) batchBody {
	pours := func(list []batch.Pour) []pourOf {
		return each(list, func(p batch.Pour) pourOf { return pourOf{weighing(p.Weighed), weighing(p.All)} })
	}
	told := sheet.DeclaredBy(s)
	body := batchBody{
		Serves: number(b.Serves), MassG: number(b.Serves * b.Grams), ServingG: number(b.Grams), Rounds: number(b.Rounds),
		Buy:    each(b.Purchases, func(x batch.Purchase) purchase { return bought(x, kitchen) }),
		Unmade: each(b.Unmade, itself),
		Costs: each(b.Costs, func(c batch.Cost) costOf {
			return costOf{c.Currency, number(c.Used / b.Serves), number(c.Outlay)}
		}),
		Pots: each(b.Pots, potOf), Build: pours(b.Build), Garnish: pours(b.Garnish), Finish: each(b.Finish, moving),
		Charges: each(b.Charges(), func(c batch.Charge) chargeOf {
			return chargeOf{c.Component, c.Bottle.String(), c.Gas.String(), c.Of, number(c.Count), number(c.Glasses)}
		}),
		Rounding: roundingOf{Share: number(b.Rounding.Share), PH: number(b.Rounding.PH)},
		Precision: precisionOf{
			Bands: each(b.Precision.Bands, func(x batch.Band) bandOf { return bandOf{x.Name, number(x.Share), x.Source} }),
			Share: number(b.Precision.Share), Inside: number(b.Precision.Inside), First: b.Precision.First, Draws: b.Precision.Draws,
		},
		Contains: containing(s),
		May:      each(told.MayContain, itself), Check: each(told.Check, itself),
		Cautions: warnings(s),
	}
	if b.Rounding.Figure != nil {
		body.Rounding.Figure = string(b.Rounding.Figure.ID)
	}
	body.Rounding.Undone = b.Rounding.Undone
	return body
}

func bought(x batch.Purchase, kitchen bool) purchase {
	p := purchase{
		Food: x.Food.ID.String(), Name: x.Name, WeighedG: number(x.Grams), BoughtG: number(x.Bought), Edible: number(x.Edible),
		VolumeML: number(x.Millilitres), Pieces: number(x.Pieces), Piece: x.Piece,
		Of: each(x.Of, func(o batch.Part) partOf { return partOf{o.Pot, number(o.Grams)} }),
	}
	p.Lot, p.Best, p.Reread, p.Past = x.Lot, x.Best, x.Reread, x.Past
	p.Form, p.WholeG = x.Form, number(x.Whole)
	for _, l := range x.Late {
		p.Late = append(p.Late, lateOf{l.Pot, number(l.UseUp)})
	}
	if x.Price != nil {
		p.Packs, p.Pack = number(x.Packs), x.Price.Per.String()
	}
	if kitchen {
		p.US = sheet.USMeasure(x.Millilitres)
	}
	return p
}

func potOf(p batch.Pot) pot {
	out := pot{
		Name: p.Name, Times: number(p.Times), Ahead: number(p.Ahead), Cut: p.Cut, Glass: p.Glass, InG: number(p.In), OutG: number(p.Out),
		NeededG: number(p.Needed), LeftG: number(p.Left()), Lines: each(p.Lines, weighing), Steps: each(p.Moves, moving),
	}
	if p.Whole != nil {
		out.Whole = &wholeOf{p.Whole.Of, p.Whole.Kept, number(p.Whole.Glasses)}
	}
	if p.Shot != nil {
		out.Shot = &shotOf{number(p.Shot.Grams), number(p.Shot.Count), number(p.Shot.Glasses)}
	}
	return out
}

func weighing(w batch.Weighed) weighedOf {
	return weighedOf{
		Path: w.Path, Name: w.Name, Food: w.Food, Exact: number(w.Amount.Number), Rounded: number(w.Rounded.Number), Unit: w.Amount.Measure.Name,
		Count: number(w.Count), Portion: w.Portion, Grams: number(w.Grams), Step: number(w.Step.Base), Bound: w.Step.Bound,
		Finer: w.Step.Finer, Coarse: w.Step.Coarse, Text: sheet.WeighedText(w),
	}
}

func moving(m batch.Move) moveOf {
	return moveOf{m.Step.StepPath(), m.Step.Kind(), each(m.Lines, weighing), each(m.Amounts, weighing), sheet.StepOf(m)}
}
