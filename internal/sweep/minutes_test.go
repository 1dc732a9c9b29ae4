package sweep_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"sipsum/internal/chemistry"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/minutes"
	"sipsum/internal/sheet"
)

// aGlassOnlyWaits holds the course of a glass to what no glass does.
func aGlassOnlyWaits(s *subject, broken say) {
	c := sheet.CourseOf(s.sheet)
	if c == nil || c.Why != "" {
		return
	}
	for _, a := range c.Axes {
		for i, p := range a.Points {
			sound := isNumber(p.Mean) && isNumber(p.Low) && isNumber(p.High) && isNumber(p.SD) && p.Low <= p.Mean && p.Mean <= p.High
			if p.Why == "" && !sound {
				broken(1e9, "%s after %g min is no figure: %v", a.Key, c.Times[i], p.Summary)
			}
		}
	}
	s.atThePour(c, broken)
	neverRises(c, minutes.Gas, 0, broken)
	gas := s.in100g(constituent.CarbonDioxide) / 100 // what leaves as gas no longer weighs
	neverRises(c, minutes.Acidity, gas, broken)
	if s.in100g(constituent.Alcohol) < 40 { // a strong spirit reads more in a refractometer as it is watered
		neverRises(c, minutes.Brix, gas, broken)
	}
	s.warms(c, broken)
	s.melts(c, broken)
}

// atThePour holds the first column to the assay, bit for bit.
func (s *subject) atThePour(c *minutes.Course, broken say) {
	chem := s.assay.Chemistry
	for key, want := range map[string]func() estimate.Summary{
		minutes.PH: func() estimate.Summary { return chem.PHMeter.Summary }, minutes.Brix: func() estimate.Summary { return chem.Brix.Summary },
		minutes.Gas: func() estimate.Summary { return chem.CO2.Summary }, minutes.Acidity: func() estimate.Summary { return chem.Acidity[0].Per100g.Summary },
	} {
		if a := c.Axis(key); a != nil && a.Points[0].Why == "" && a.Points[0].Summary != want() {
			broken(1, "%s at 0 min is %v, and the assay says %v", key, a.Points[0].Summary, want())
		}
	}
}

func neverRises(c *minutes.Course, key string, but float64, broken say) {
	a := c.Axis(key)
	if a == nil {
		return
	}
	for i := 1; i < len(a.Points); i++ {
		was, is := a.Points[i-1], a.Points[i]
		if was.Why == "" && is.Why == "" && is.Mean > was.Mean*(1+1e-4+but)+1e-9 {
			broken(is.Mean-was.Mean, "%s rises from %.6g to %.6g", key, was.Mean, is.Mean)
		}
		if is.Why == "" && is.Low < 0 {
			broken(-is.Low, "%s falls below nothing: %.6g", key, is.Low)
		}
	}
}

// coldest is halfway to the lowest freezing point of ethanol and water in print, −49.5 °C at 68 % by mass (CRC Handbook, concentrative
// properties of ethanol), rounded down.
const coldest = -25

// warms holds the temperature between where it begins and the room; ice takes it no lower than halfway to where it freezes.
func (s *subject) warms(c *minutes.Course, broken say) {
	a := c.Axis(minutes.Temperature)
	if a == nil || a.Points[0].Why != "" {
		return
	}
	first, room := a.Points[0], rate(c, "room")
	least, most := math.Min(first.Low, room.Low), math.Max(first.High, room.High)
	melted := c.Axis(minutes.Melted)
	if melted != nil {
		least = math.Min(least, coldest)
	}
	for i, p := range a.Points {
		if p.Low < least-rounding || p.High > most+rounding {
			broken(1, "after %g min it has %v °C, and goes from %v to %v", c.Times[i], p.Summary, first.Summary, room)
		}
		onIce := melted != nil && melted.Points[i].High < s.assay.Drink.Stands.Ice.Base()-s.assay.Drink.Stands.Ice.Half
		if onIce && s.assay.Drink.Stands.Melts == nil && p.Mean > max(first.Mean, 0)+rounding { // below 0 °C it may warm to where it rests
			broken(p.Mean-first.Mean, "with ice in it the drink warms from %.6g to %.6g °C", first.Mean, p.Mean)
		}
		if i > 0 && melted == nil && math.Abs(p.Mean-room.Mean) > math.Abs(a.Points[i-1].Mean-room.Mean)+rounding {
			broken(1, "it moves away from the room: %.6g, then %.6g °C", a.Points[i-1].Mean, p.Mean)
		}
	}
}

// rate is what was taken for a rate.
func rate(c *minutes.Course, name string) estimate.Summary {
	for _, r := range c.Rates {
		if r.Name == name {
			return r.Result.Summary
		}
	}
	return estimate.Summary{}
}

// melts holds the ice to what there is.
func (s *subject) melts(c *minutes.Course, broken say) {
	a := c.Axis(minutes.Melted)
	if a == nil || a.Points[0].Why != "" {
		return
	}
	ice := rate(c, "ice")
	before := chemistry.Estimate{}
	for i, p := range a.Points {
		if p.Low < 0 || p.High > ice.High*(1+rounding) {
			broken(p.High, "of %v g of ice %v g have melted after %g min", ice, p.Summary, c.Times[i])
		}
		if p.Mean < before.Mean {
			broken(before.Mean-p.Mean, "what has melted freezes again: %.6g, then %.6g g", before.Mean, p.Mean)
		}
		before = p
	}
}

// Odd glasses: each drink in each way of standing keeps every law.
func TestGlassesThatStand(t *testing.T) {
	k, b := newKitchen(t), newBreaches(laws, printedLaws, refusalLaws)
	drinks := []string{
		"[100 g core:orange-juice]", "[0.5 g core:lemon-juice]", "[4 kg core:apple-juice]", "[90 g core:gin-45, 20 g core:lemon-juice]", "[40 g core:ethanol, 2 g core:water-pure]",
		"[150 g core:milk-whole, 30 g core:espresso]", "[100 g core:water-mineral-high, 1 g core:sodium-bicarbonate]", "[60 g core:olive-oil]", "[100 g core:water-pure]", "[120 g core:wine-sparkling]",
		"[100 g core:tonic-water]", "[50 g core:sugar-white, 50 g core:water-pure]",
	}
	ways := []string{
		"", "at: 6 °C\n", "at: 88 °C\n", "at: -15 °C\n", "at: -4 °C ± 1 °C sd\nstands: {ice: 40 g}\n", "at: 22 °C\nstands: {room: 22 °C}\n", "at: 0 °C\nstands: {room: 0 °C, ice: 500 g ± 200 g}\n",
		"at: 14 °C\nstands: {ice: 1 g, room: 50 °C}\n", "at: 4 °C\nstands: {ice: 60 g, melts: 0 g/min}\n", "stands: {ice: 60 g, melts: 90 g/min}\n", "stands: {ice: 10 g}\n",
	}
	gases := []string{"", "finish:\n  - carbonate: {left: 6 g/l ± 2 g/l}\n", "finish:\n  - carbonate: {left: 0.4 g/l}\n    takes: 30 s\n  - treat: poured\n    takes: 2 min a glass\n"}
	var texts []string
	for i, d := range drinks {
		for j, w := range ways {
			texts = append(texts, fmt.Sprintf("drink: \"Waits\"\nserves: %d\nbuild: %s\n%s%s", 1+j%4, d, w, gases[(i+j)%len(gases)]))
		}
	}
	sideBySide(texts, func(text string) {
		s, refused := k.serve(strings.ReplaceAll(text, "\n", " "), text)
		if refused != nil {
			if how := refused.proper(); how != "" {
				t.Errorf("%s\n%s", how, text)
			}
			return
		}
		b.judge(s, laws, printedLaws)
	})
	b.report(t)
}
