package contrast

import (
	"math"
	"slices"

	"sipsum/internal/assay"
	"sipsum/internal/chemistry"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/taste"
	"sipsum/internal/unit"
)

// Kind names a figure of a drink that is no constituent.
type Kind string

// The kinds.
const (
	Mass    Kind = "mass"
	Volume  Kind = "volume"
	PH      Kind = "ph" // at 25 °C
	Acidity Kind = "titratable_acidity"
	Acids   Kind = "acid_molecules" // with a proton to give, and H⁺
	Brix    Kind = "brix"
	Density Kind = "density"
	Gas     Kind = "co2"
)

// Liquid is a figure of both drinks that is no constituent.
type Liquid struct {
	Kind Kind
	A, B composition.Result
	Difference
}

// liquids sets what is liquid of a serving against itself.
func (p *pair) liquids() []Liquid {
	a, b := p.assays[0].Chemistry, p.assays[1].Chemistry
	if a == nil || b == nil {
		return nil
	}
	acids, water := p.acids(), p.apart(func(id constituent.ID) bool { return id == constituent.Water })
	list := []Liquid{p.estimates(PH, a.PHMeter, b.PHMeter, acids)}
	if len(a.Acidity) > 0 && len(b.Acidity) > 0 {
		list = append(list, p.estimates(Acidity, a.Acidity[0].Per100g, b.Acidity[0].Per100g, acids))
	}
	x, y := taste.Sourness(p.assays[0].Glass()).Molecules, taste.Sourness(p.assays[1].Glass()).Molecules
	list = append(list, p.estimates(Acids, chemistry.Estimate{Result: x.Result, Why: x.Why}, chemistry.Estimate{Result: y.Result, Why: y.Why}, acids))
	dry := func(r composition.Result, why string) chemistry.Estimate {
		return chemistry.Estimate{Result: r, Why: why}
	}
	list = append(list,
		p.estimates(Brix, dry(a.Brix, a.TooDry), dry(b.Brix, b.TooDry), water),
		p.estimates(Density, dry(a.Density, a.TooDry), dry(b.Density, b.TooDry), water))
	if a.CO2.Mean != 0 || b.CO2.Mean != 0 { // NaN too
		list = append(list, p.estimates(Gas, dry(a.CO2, untold(a.CO2)), dry(b.CO2, untold(b.CO2)), 1))
	}
	return list
}

func untold(gas composition.Result) string {
	if gas.Unknown {
		return "how much gas is in it nobody has stated"
	}
	return ""
}

// estimates sets an estimate against itself; apart says how much of what both are open to is not the
// same in both, from 0 to 1.
func (p *pair) estimates(kind Kind, a, b chemistry.Estimate, apart float64) Liquid {
	l := Liquid{Kind: kind, A: a.Result, B: b.Result}
	if a.Why != "" || b.Why != "" {
		l.Difference = p.withheld(a, b)
		return l
	}
	l.Difference = differenceOf(less(columnOf(b.Result), columnOf(a.Result)), 1)
	downA, upA := beyond(a.Result)
	downB, upB := beyond(b.Result)
	open := apart * (max(downA, downB) + max(upA, upB))
	l.Least = l.Low + min(0, downA-downB, upB-upA) - open
	l.Most = l.High + max(0, downA-downB, upB-upA) + open
	return l
}

// beyond tells how far an estimate is open beyond its draws.
func beyond(r composition.Result) (down, up float64) {
	drawn := estimate.Summarise(columnOf(r))
	return past(drawn.Low-r.Low, r.Mean), past(r.High-drawn.High, r.Mean)
}

// past is none where arithmetic leaves it.
func past(x, of float64) float64 {
	if x <= unit.Closeness*math.Abs(of) {
		return 0
	}
	return x
}

// withheld is the difference of figures of which one at least is not given: it lies between the ends
// that bound them. The same liquid has no difference, whatever is not known of it.
func (p *pair) withheld(a, b chemistry.Estimate) Difference {
	if a.Why == b.Why && p.alike() {
		return Difference{}
	}
	none := math.NaN()
	d := Difference{Summary: estimate.Summary{Mean: none, SD: none, Low: none, High: none}, Least: b.Low - a.High, Most: b.High - a.Low}
	switch {
	case a.Why == "":
		d.Why = "in B: " + b.Why
	case b.Why == "":
		d.Why = "in A: " + a.Why
	case a.Why == b.Why:
		d.Why = a.Why
	default:
		d.Why = "in A: " + a.Why + "; in B: " + b.Why
	}
	return d
}

// alike reports whether two servings hold the same in every draw.
func (p *pair) alike() bool {
	a, b := p.assays[0].Glass().Pot, p.assays[1].Glass().Pot
	if len(a.Rows) != len(b.Rows) || len(a.Columns.List) != len(b.Columns.List) {
		return false
	}
	for row, r := range a.Rows {
		if r.Profile.Food.ID != b.Rows[row].Profile.Food.ID || p.restated[r.Profile.Food.ID.Code] {
			return false
		}
		for col := range a.Columns.List {
			if a.Columns.List[col] != b.Columns.List[col] || !slices.Equal(a.Cell(row, col), b.Cell(row, col)) {
				return false
			}
		}
	}
	return true
}

// potassium is what balances the acids of fruit.
const potassium constituent.ID = "K"

// acids tells how much of what leaves a pH open is not the same in both: of acids and potassium that
// nobody has stated, else of whatever of a food is unknown.
func (p *pair) acids() float64 {
	of := func(id constituent.ID) bool {
		return id == potassium || id == constituent.OrganicAcids || constituent.Must(id).Parent == constituent.OrganicAcids
	}
	if p.someUnknown(of) {
		return p.apart(of)
	}
	return p.apart(func(constituent.ID) bool { return true })
}

func (p *pair) someUnknown(of func(constituent.ID) bool) bool {
	return slices.ContainsFunc(p.assays[:], func(a *assay.Assay) bool { return len(unknownIn(a.Serving, of)) > 0 })
}

// apart tells of those foods of which some constituents are unknown how much of a serving they are
// in one drink and not in the other, at most: 0 where all are as much of both, 1 where one of them is
// in one alone.
func (p *pair) apart(of func(constituent.ID) bool) float64 {
	a, b := unknownIn(p.assays[0].Serving, of), unknownIn(p.assays[1].Serving, of)
	most := 0.0
	for id := range a {
		if id.Table == food.Own && p.restated[id.Code] {
			return 1
		}
		if large := max(a[id], b[id]); large > 0 && !near(a[id], b[id]) {
			most = max(most, 1-min(a[id], b[id])/large)
		}
	}
	for id := range b {
		if _, both := a[id]; !both {
			return 1
		}
	}
	return most
}

// unknownIn gives the foods of a pot of which some constituents are unknown, with the share of its
// mass that each is.
func unknownIn(pot *ledger.Pot, of func(constituent.ID) bool) map[food.ID]float64 {
	held, mass := map[food.ID]float64{}, pot.Central(constituent.Mass)
	for row, r := range pot.Rows {
		if unknown(pot, row, of) {
			held[r.Profile.Food.ID] += pot.CentralOf(row, constituent.Mass) / mass
		}
	}
	return held
}

func unknown(pot *ledger.Pot, row int, of func(constituent.ID) bool) bool {
	bounds := pot.Bounds(row)
	for _, c := range constituent.All() {
		if of(c.ID) && bounds[c.Order] != 0 {
			return true
		}
	}
	return false
}
