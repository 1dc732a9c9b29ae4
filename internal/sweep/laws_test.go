package sweep_test

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"sync"

	"sipsum/internal/acid"
	"sipsum/internal/chemistry"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/ledger/ledgertest"
	"sipsum/internal/prep"
	"sipsum/internal/unit"
)

// rounding is what sums of floating point numbers may be off by, relative.
const rounding = 1e-9

// say reports how a law is broken; size orders the cases, the larger the worse.
type say func(size float64, format string, args ...any)

// law is something that holds of every drink.
type law struct {
	name, says, from string
	broken           func(*subject, say)
}

// laws are of the calculation. from says why it must be so.
var laws = []law{
	{"interval holds mean", "0 ≤ low ≤ mean ≤ high", "a 90 % interval of a positive quantity", intervalHoldsMean},
	{"bounds above", "mean ≤ with_bounds; coverage = mean ÷ with_bounds in [0, 1]", "design §9", boundsAbove},
	{"mass bounds", "nothing of the mass weighs more than the serving", "mass is a sum of parts", massBounds},
	{"riders are no water", "water and anything that is carried weigh no more than the serving", "mass is a sum of parts", ridersAreNoWater},
	{"parts below parent", "no part's mean exceeds its parent's; together they are the parent", "design §5 (6)", partsBelowParent},
	{"leaves are the mass", "Σ leaves = mass in every draw", "conservation of mass", leavesAreTheMass},
	{"contributions add up", "contributions sum to the total, shares to 1", "design §9", contributionsAddUp},
	{"ingredients add up", "ingredients sum to the total, shares to 1, none outside [0, 1]; those of a component to what it brings", "conservation of mass", ingredientsAddUp},
	{"what is forbidden never passes", "a food that the file pours anywhere never passes as absent, by its code, name or kind", "a rule is kept only by what is surely so", forbiddenNeverPasses},
	{"what is said holds", "no sentence of the brief is false in any draw with all that is unknown at its most", "a sentence for the stage says no more than is known", whatIsSaidHolds},
	{"what is spoken is borne", "a speech is said in 90 s, in plain words with sources, says no more than its figures with all that is unknown at its most, and all that must be told", "a sentence for the stage says no more than is known", whatIsSpokenIsBorne},
	{"the ladder holds", "no sentence about who brings what is above its rung in any draw with all that is unknown at its most, each is cited, and none says what its words say", "data/ladder.csv", theLadderHolds},
	{"what is not said does not hold", "what the brief warns of does not hold in every draw", "a warning that cries wolf is none", whatIsNotSaidDoesNotHold},
	{"a change does what it says", "the amount that the brief proposes does what it is for, spills nothing, and goes the same way in every draw", "a proposal that no run bears out is none", aChangeDoesWhatItSays},
	{"components add up", "components weigh what the serving weighs, and hold what it holds", "conservation of mass", componentsAddUp},
	{"energy possible", "0 ≤ energy ≤ that of fat", "Regulation (EU) No 1169/2011, Annex XIV", energyPossible},
	{"energy of its parts", "energy = Σ factor × part", "Regulation (EU) No 1169/2011, Annex XIV", energyOfItsParts},
	{"mass is volume by density", "mass = volume × density", "definition", massIsVolumeByDensity},
	{"a foam is its liquid and gas", "0 < liquid ÷ foam ≤ 1; foam ≥ liquid; gas in the liquid and above it is the charge; pressure > 0; a serving fills its volume or more", "definition of overrun; conservation of mass", aFoamIsItsLiquidAndGas},
	{"nothing from nothing", "a constituent is there only if a food has it or a step makes it", "conservation", nothingFromNothing},
	{"pH possible", "1 ≤ pH ≤ 8.5 but for mineral acids, waters, salts and eggs", "limits.csv", phPossible},
	{"acidity of its acids", "0 ≤ titratable acidity ≤ what acids, phosphate and what is unknown can give", "charge balance", acidityOfItsAcids},
	{"tastes of their parts", "no number beside a taste is negative, above its parts, or sure where they are not", "taste/doc.go", tastesOfTheirParts},
	{"sour takes base", "a liquid below pH 5 whose buffer is known has an acidity", "charge balance", sourTakesBase},
	{"withheld says why", "a figure of the chemistry that is withheld says why, and what to read", "design §9", withheldSaysWhy},
	{"weighs what was poured", "a drink that is only mixed weighs what its lines say", "conservation of mass", weighsWhatWasPoured},
	{"a ratio needs acid", "°Brix to acidity is of what has an acidity", "a quotient by nothing is no figure", aRatioNeedsAcid},
	{"an open pH is withheld", "a pH whose interval is wider than ± 0.6 is withheld", "data/acid_unmeasured.csv, widest", anOpenPHIsWithheld},
	{"protein needs a titration", "above 1.5 g of protein in 100 g no pH from composition", "data/acid_unmeasured.csv", proteinNeedsATitration},
	{"an open liquid holds little gas", "what is not sold with its gas could hold no more than water under carbon dioxide alone", "Henry's law", anOpenLiquidHoldsLittleGas},
	{"a glass only waits", "a glass that stands comes to the room's temperature and never passes it, loses gas and gains none, melts no more ice than it has, and is at 0 min what the assay says", "heat flows downhill; conservation of mass", aGlassOnlyWaits},
	{"a stated strength is held", "alcohol of a spirit whose name fits its figure varies by what a label may be off", "Regulation (EU) No 1169/2011, Annex XII", aStatedStrengthIsHeld},
}

// limits are the rows of testdata/limits.csv.
var limits = sync.OnceValue(func() map[string]float64 {
	file, err := os.Open("testdata/limits.csv")
	if err != nil {
		panic(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		panic(err)
	}
	all := map[string]float64{}
	for _, row := range rows[1:] {
		x, err := strconv.ParseFloat(row[1], 64)
		if err != nil || row[3] == "" {
			panic("limits.csv: " + strings.Join(row, ","))
		}
		all[row[0]] = x
	}
	return all
})

func limit(what string) float64 {
	x, ok := limits()[what]
	if !ok {
		panic("limits.csv lacks " + what)
	}
	return x
}

// compositions are the lists of figures of an assay by what they are of.
func (s *subject) compositions() map[string]composition.Composition {
	all := map[string]composition.Composition{"a serving": s.assay.PerServing, "100 g": s.assay.Per100g, "100 ml": s.assay.Per100ml}
	for i, c := range s.assay.Components {
		all[fmt.Sprintf("part %d, %s", i+1, c.Name)] = c.Constituents
	}
	return all
}

// figures calls f for every figure of every list that is known.
func (s *subject) figures(f func(of string, fig composition.Figure)) {
	all := s.compositions()
	for _, of := range order(all) {
		for _, fig := range all[of] {
			f(of, fig)
		}
	}
}

// mean gives the central value of a figure of the serving, 0 if nothing is known.
func (s *subject) mean(id constituent.ID) float64 {
	if f, ok := s.assay.PerServing.Find(id); ok && !f.Unknown {
		return f.Mean
	}
	return 0
}

// in100g gives grams in 100 g of the serving.
func (s *subject) in100g(id constituent.ID) float64 {
	return 100 * s.assay.Serving.Central(id) / s.assay.Mass.Mean
}

func isNumber(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

func intervalHoldsMean(s *subject, broken say) {
	check := func(of string, r composition.Result) {
		scale := math.Max(math.Abs(r.Mean), 1e-12)
		switch {
		case !isNumber(r.Mean) || !isNumber(r.Low) || !isNumber(r.High) || !isNumber(r.SD):
			broken(1e9, "%s: not a number: %v", of, r.Summary)
		case r.Low < 0 || r.Mean < 0:
			broken(-math.Min(r.Low, r.Mean), "%s: below zero: %v", of, r.Summary)
		case r.Low > r.Mean*(1+rounding):
			broken((r.Low-r.Mean)/scale, "%s: low %.6g above the mean %.6g", of, r.Low, r.Mean)
		case r.High < r.Mean*(1-rounding):
			broken((r.Mean-r.High)/scale, "%s: high %.6g below the mean %.6g", of, r.High, r.Mean)
		}
	}
	s.figures(func(of string, f composition.Figure) {
		if !f.Unknown {
			check(string(f.Constituent.ID)+" of "+of, f.Result)
		}
	})
	check("mass", s.assay.Mass)
	check("volume", s.assay.Volume)
	check("density", s.assay.Density)
	s.chemistries(func(of string, c *chemistry.Chemistry) {
		for name, e := range map[string]chemistry.Estimate{"pH": c.PH, "pH of a meter": c.PHMeter, "°Brix to acid": c.BrixAcid, "corrected °Brix": c.BrixCorrected, "buffer": c.Capacity} {
			if e.Why == "" && e.Unit != "" {
				check(name+" of "+of, e.Result)
			}
		}
		for _, a := range c.Acidity {
			if a.Per100g.Why == "" {
				check(fmt.Sprintf("acidity to %.1f of %s", a.EndPoint, of), a.Per100g.Result)
			}
			if a.PerLitre.Why == "" {
				check(fmt.Sprintf("acidity to %.1f, a litre, of %s", a.EndPoint, of), a.PerLitre.Result)
			}
		}
	})
}

func boundsAbove(s *subject, broken say) {
	s.figures(func(of string, f composition.Figure) {
		if isNumber(f.WithBounds) && !f.Unknown && f.WithBounds < f.Mean*(1-rounding) {
			broken(f.Mean/f.WithBounds-1, "%s of %s: with bounds %.6g, mean %.6g", f.Constituent.ID, of, f.WithBounds, f.Mean)
		}
		if isNumber(f.Coverage) && (f.Coverage < 0 || f.Coverage > 1+rounding) {
			broken(math.Abs(f.Coverage), "%s of %s: coverage %.6g", f.Constituent.ID, of, f.Coverage)
		}
		if isNumber(f.Coverage) && f.WithBounds > 0 && !f.Unknown && math.Abs(f.Coverage-f.Mean/f.WithBounds) > 1e-6 {
			broken(math.Abs(f.Coverage-f.Mean/f.WithBounds), "%s of %s: coverage %.6g, mean %.6g, with bounds %.6g", f.Constituent.ID, of, f.Coverage, f.Mean, f.WithBounds)
		}
		if math.IsInf(f.WithBounds, 0) || math.IsInf(f.Coverage, 0) {
			broken(1e9, "%s of %s: infinite bound", f.Constituent.ID, of)
		}
	})
}

// ofMass reports whether a constituent is a part of the mass.
func ofMass(c *constituent.Constituent) bool {
	for c.Parent != "" {
		c = constituent.Must(c.Parent)
	}
	return c.ID == constituent.Mass
}

// ridersAreNoWater: what is in no sum of masses is of the dry matter all the same.
func ridersAreNoWater(s *subject, broken say) {
	pot := s.assay.Serving
	water, mass := pot.Central(constituent.Water), pot.Central(constituent.Mass)
	for _, c := range constituent.All() {
		if x := pot.Central(c.ID); c.Kind == constituent.Rider && water+x > mass*(1+rounding) {
			broken(water+x-mass, "%g g of water and %g g of %s in %g g", water, x, c.ID, mass)
		}
	}
}

func massBounds(s *subject, broken say) {
	mass := s.assay.Mass
	for _, f := range s.assay.PerServing {
		c := f.Constituent
		if c.Kind == constituent.Figure || c.PerGram == 0 {
			continue
		}
		grams := func(x float64) float64 { return x / c.PerGram }
		if !f.Unknown && grams(f.Mean) > mass.Mean*(1+rounding) {
			broken(grams(f.Mean)/mass.Mean-1, "%s: %.4g g in %.4g g", c.ID, grams(f.Mean), mass.Mean)
		}
		if !f.Unknown && ofMass(c) && grams(f.High) > mass.High*(1+rounding) {
			broken(grams(f.High)/mass.High-1, "%s: high %.4g g in %.4g g", c.ID, grams(f.High), mass.High)
		}
		if isNumber(f.WithBounds) && grams(f.WithBounds) > mass.Mean*(1+1e-6) {
			broken(grams(f.WithBounds)/mass.Mean-1, "%s: with bounds %.4g g in %.4g g", c.ID, grams(f.WithBounds), mass.Mean)
		}
	}
}

func partsBelowParent(s *subject, broken say) {
	for of, list := range s.compositions() {
		for _, f := range list {
			p := f.Constituent
			if p.Kind != constituent.Parent || f.Unknown {
				continue
			}
			total, sum := f.Mean/p.PerGram, 0.0
			for _, child := range constituent.Sums().Children(p.ID) {
				part, ok := list.Find(child.ID)
				if !ok || part.Unknown {
					continue
				}
				grams := part.Mean / child.PerGram
				sum += grams
				if grams > total*(1+1e-6)+rounding {
					broken(grams/total-1, "%s %.5g g > %s %.5g g of %s", child.ID, grams, p.ID, total, of)
				}
			}
			if sum > total*(1+1e-6)+rounding {
				broken(sum/total-1, "parts of %s are %.5g g, it is %.5g g of %s", p.ID, sum, total, of)
			}
		}
	}
}

func leavesAreTheMass(s *subject, broken say) {
	if off := ledgertest.Closed(s.assay.Serving); off > rounding {
		broken(off, "the ledger is off by %.3g", off)
	}
}

func contributionsAddUp(s *subject, broken say) {
	for _, f := range s.assay.PerServing {
		sum, shares, rows := 0.0, 0.0, 0
		for _, c := range f.Contributions {
			sum += c.Mean
			if isNumber(c.Share.Mean) {
				shares, rows = shares+c.Share.Mean, rows+1
			}
			if c.Mean < 0 {
				broken(-c.Mean, "%s of %s: %.4g", f.Constituent.ID, c.Food, c.Mean)
			}
			for _, x := range []float64{c.Share.Mean, c.Share.Low, c.Share.High} {
				if x < 0 || x > 1+1e-6 {
					broken(math.Abs(x), "share of %s of %s: %v", f.Constituent.ID, c.Food, c.Share)
				}
			}
		}
		if f.Unknown {
			continue
		}
		if scale := math.Max(f.Mean, 1e-9); math.Abs(sum-f.Mean) > 1e-6*scale {
			broken(math.Abs(sum-f.Mean)/scale, "%s: contributions %.6g, total %.6g", f.Constituent.ID, sum, f.Mean)
		}
		if rows > 0 && math.Abs(shares-1) > 1e-6 {
			broken(math.Abs(shares-1), "%s: shares add up to %.6g", f.Constituent.ID, shares)
		}
	}
}

func componentsAddUp(s *subject, broken say) {
	mass, sums := 0.0, map[constituent.ID]float64{}
	for _, c := range s.assay.Components {
		mass += c.Mass.Mean
		for _, f := range c.Constituents {
			if !f.Unknown {
				sums[f.Constituent.ID] += f.Mean
			}
		}
	}
	if want := s.assay.Mass.Mean; math.Abs(mass-want) > 1e-6*want {
		broken(math.Abs(mass/want-1), "components weigh %.6g g, the serving %.6g g", mass, want)
	}
	for _, f := range s.assay.PerServing {
		if scale := math.Max(f.Mean, 1e-9); !f.Unknown && math.Abs(sums[f.Constituent.ID]-f.Mean) > 1e-6*scale {
			broken(math.Abs(sums[f.Constituent.ID]-f.Mean)/scale, "%s: components %.6g, serving %.6g", f.Constituent.ID, sums[f.Constituent.ID], f.Mean)
		}
	}
}

func energyPossible(s *subject, broken say) {
	for _, id := range []constituent.ID{constituent.Energy, constituent.EnergyKcal} {
		f, ok := s.assay.PerServing.Find(id)
		if !ok || f.Unknown {
			continue
		}
		perGram := f.Mean / s.assay.Mass.Mean
		if id == constituent.EnergyKcal {
			perGram *= 4.184
		}
		if perGram < 0 || perGram > limit("energy most") {
			broken(perGram, "%s: %.4g kJ in a gram", id, perGram)
		}
		if isNumber(f.WithBounds) && f.WithBounds/s.assay.Mass.Mean > limit("energy most")*1.03 {
			broken(f.WithBounds/s.assay.Mass.Mean, "%s: with bounds %.4g a gram", id, f.WithBounds/s.assay.Mass.Mean)
		}
	}
}

// energyFactors are kJ and kcal in a gram by constituent, of data/energy_factors.csv, eu.
var energyFactors = sync.OnceValue(func() map[constituent.ID][2]float64 {
	all := map[constituent.ID][2]float64{}
	for _, row := range rowsOf("energy_factors.csv") {
		if row["rules"] == "eu" {
			kj, _ := strconv.ParseFloat(row["kj_per_g"], 64)
			kcal, _ := strconv.ParseFloat(row["kcal_per_g"], 64)
			all[constituent.ID(row["constituent"])] = [2]float64{kj, kcal}
		}
	}
	return all
})

// energyByHand adds up the parts by the factors, where no part is in another.
func (s *subject) energyByHand(unit int) float64 {
	factors, sum := energyFactors(), 0.0
	var below func(id constituent.ID, factor float64)
	below = func(id constituent.ID, factor float64) {
		if own, ok := factors[id]; ok {
			factor = own[unit]
		}
		children := constituent.Sums().Children(id)
		if len(children) == 0 {
			sum += factor * s.mean(id) / constituent.Must(id).PerGram
		}
		for _, child := range children {
			below(child.ID, factor)
		}
	}
	below(constituent.Mass, 0)
	return sum
}

func energyOfItsParts(s *subject, broken say) {
	for unit, id := range []constituent.ID{constituent.Energy, constituent.EnergyKcal} {
		want, got := s.energyByHand(unit), s.mean(id)
		if math.Abs(want-got) > 1e-6*math.Max(want, 1e-6) {
			broken(math.Abs(want-got)/math.Max(got, 1e-6), "%s: %.6g, its parts give %.6g", id, got, want)
		}
	}
}

// liquid reports whether the serving is one: what is not fat holds water or alcohol enough,
// and it is not fat alone.
func (s *subject) liquid() bool {
	wet, lean := s.in100g(constituent.Water)+s.in100g(constituent.Alcohol), 100-s.in100g(constituent.Fat)
	return wet >= limit("water in fat") && 100*wet >= lean*limit("water least")
}

// shareOf gives the share of the serving's mass that came as foods of some groups.
func (s *subject) shareOf(groups ...string) float64 {
	sum := 0.0
	for row, r := range s.assay.Serving.Rows {
		for _, g := range groups {
			if r.Profile.Food.Group == g {
				sum += s.assay.Serving.Of(row, constituent.Mass)[0]
			}
		}
	}
	return sum / s.assay.Mass.Mean
}

// holds reports whether a food of a group, or with a code, is in the drink.
func (s *subject) holds(names ...string) bool {
	for _, r := range s.assay.Serving.Rows {
		for _, n := range names {
			if r.Profile.Food.Group == n || r.Profile.Food.ID.Code == n {
				return true
			}
		}
	}
	return false
}

func massIsVolumeByDensity(s *subject, broken say) {
	m, v, d := s.assay.Mass.Mean, s.assay.Volume.Mean, s.assay.Density.Mean
	if math.Abs(m-v*d) > 1e-6*m {
		broken(math.Abs(m-v*d)/m, "%.6g g, %.6g ml of %.6g g/ml", m, v, d)
	}
}

// made are the constituents that the steps of a drink, and of the components in it, make.
func made(d *drink.Drink) map[constituent.ID]bool {
	all := map[constituent.ID]bool{}
	add := func(steps []drink.Step) {
		for _, step := range steps {
			ids := prep.MethodOf(step).Makes(step)
			if _, ferments := step.(*drink.Ferment); ferments {
				ids = append(ids, constituent.Water) // alcohol and oxygen make acetic acid and water
			}
			for _, id := range ids {
				all[id] = true
				for _, leaf := range constituent.Sums().Leaves(id) {
					all[leaf.ID] = true
				}
			}
		}
	}
	add(d.Finish)
	for i := range d.Components {
		add(d.Components[i].Steps)
	}
	return all
}

func nothingFromNothing(s *subject, broken say) {
	made, pot := made(s.assay.Drink), s.assay.Serving
	for row, r := range pot.Rows {
		for col, c := range pot.Columns.List {
			cell := r.Profile.Cells[c.Order]
			has := cell.Known && (cell.Amount != 0 || cell.Limit > 0)
			if c.ID == constituent.AddedSugar && r.Profile.Food.Facts().Juice {
				continue // what has lost water is concentrated juice: 21 CFR 101.9(c)(6)(iii)
			}
			if x := pot.Cell(row, col)[0]; x > 1e-12 && !has && !made[c.ID] && c.Kind != constituent.Rest {
				broken(x, "%.4g g of %s of %s", x, c.ID, r.Profile.Food.ID)
			}
		}
	}
}

// chemistries calls f for the chemistry of the serving and of each component.
func (s *subject) chemistries(f func(of string, c *chemistry.Chemistry)) {
	f("the serving", s.assay.Chemistry)
	for _, c := range s.assay.Components {
		if c.Chemistry != nil {
			f(c.Name, c.Chemistry)
		}
	}
}

// isWater reports whether a component is made of waters alone.
func (s *subject) isWater(component string) bool {
	for _, c := range s.assay.Drink.Components {
		if c.Name == component {
			return !slices.ContainsFunc(c.Ingredients, func(l drink.Line) bool {
				return !strings.Contains(l.Food, "core:water-") && l.Food != "core:soda-water"
			})
		}
	}
	return false
}

func phPossible(s *subject, broken say) {
	s.chemistries(func(of string, c *chemistry.Chemistry) {
		if c.Water != nil || s.isWater(of) { // only waters have their hardness told, where it is known
			return
		}
		for _, e := range []chemistry.Estimate{c.PH, c.PHMeter, c.Degassed} {
			if e.Why != "" || e.Unit == "" {
				continue
			}
			if e.Mean < limit("pH least") && !s.holds("acid", "salt") {
				broken(limit("pH least")-e.Mean, "pH %.2f of %s", e.Mean, of)
			}
			if e.Mean > limit("pH most") && !s.holds("salt", "egg") && s.shareOf("water") < 0.5 {
				broken(e.Mean-limit("pH most"), "pH %.2f of %s", e.Mean, of)
			}
		}
	})
}

// read reports whether a reading or a titration of any kind is in the drink.
func (s *subject) read() bool {
	return strings.Contains(s.text, "measured")
}

// acidityFrom gives the most titratable acidity in g/100 g as citric acid that the
// acids of the serving can give; NaN where something has no bound.
func (s *subject) acidityFrom() float64 {
	const citric = 64.04 // g in a mole of protons
	equivalents := 0.0
	counted := map[constituent.ID]bool{}
	for _, a := range acid.All() {
		if a.Constituent == "" || counted[a.Constituent] {
			continue
		}
		counted[a.Constituent] = true
		if f, ok := s.assay.PerServing.Find(a.Constituent); ok {
			most := f.WithBounds
			if math.IsNaN(most) && constituent.Must(a.Constituent).Parent == constituent.OrganicAcids {
				most = s.mean(a.Constituent) // what it could be more is in the bound of all acids
			}
			equivalents += most / constituent.Must(a.Constituent).PerGram / a.Equivalent()
		}
	}
	if all, ok := s.assay.PerServing.Find(constituent.OrganicAcids); ok {
		const oxalic = 45.02 // g in a mole of protons: no acid of a food has more
		equivalents += math.Max(all.WithBounds-s.mean(constituent.OrganicAcids)+s.mean("OA-other"), 0) / oxalic
	}
	return equivalents * citric * 100 / s.assay.Mass.Mean
}

func acidityOfItsAcids(s *subject, broken say) {
	published := false
	for _, r := range s.assay.Serving.Rows {
		_, has := r.Profile.Food.Value("titratable")
		published = published || has
	}
	for _, a := range s.assay.Chemistry.Acidity {
		if a.Per100g.Why != "" {
			continue
		}
		if a.Per100g.Mean < 0 {
			broken(-a.Per100g.Mean, "%.3g g/100 g to pH %.1f", a.Per100g.Mean, a.EndPoint)
		}
		most := s.acidityFrom()
		if !s.read() && !published && isNumber(most) && a.Per100g.Mean > most*limit("acid surplus")+limit("blend acidity least") {
			broken(a.Per100g.Mean/most-1, "%.3g g/100 g to pH %.1f, its acids can give %.3g", a.Per100g.Mean, a.EndPoint, most)
		}
	}
}

func sourTakesBase(s *subject, broken say) {
	s.chemistries(func(of string, c *chemistry.Chemistry) {
		sour := c.PHMeter.Why == "" && c.PHMeter.Unit != "" && c.PHMeter.Mean < limit("acid liquid")
		known := c.Capacity.Why == "" && c.Capacity.Mean >= 1 && c.CO2.Mean == 0 // acidity is without gas
		if sour && known && len(c.Acidity) > 0 && c.Acidity[0].Per100g.Why == "" && c.Acidity[0].Per100g.Mean <= 0 {
			broken(limit("acid liquid")-c.PHMeter.Mean, "pH %.2f of %s and no acidity", c.PHMeter.Mean, of)
		}
	})
}

func withheldSaysWhy(s *subject, broken say) {
	s.chemistries(func(of string, c *chemistry.Chemistry) {
		for name, e := range map[string]chemistry.Estimate{"pH": c.PHMeter, "°Brix to acid": c.BrixAcid, "buffer": c.Capacity} {
			if !isNumber(e.Mean) && e.Why == "" {
				broken(1, "%s of %s is withheld without a reason", name, of)
			}
		}
		why := c.PHMeter.Why
		said := false
		for _, word := range []string{"measure", "titrat", "read", "no water", "decides", "degas"} {
			said = said || strings.Contains(why, word)
		}
		if why != "" && !said {
			broken(1, "no reading is named for %s: %s", of, why)
		}
	})
}

func proteinNeedsATitration(s *subject, broken say) {
	if s.read() || s.oneFood() { // of one food alone its published pH is known
		return
	}
	if protein := s.in100g(constituent.Protein); protein > limit("protein") && s.assay.Chemistry.PHMeter.Why == "" {
		broken(protein, "pH %.2f with %.2g g of protein in 100 g", s.assay.Chemistry.PHMeter.Mean, protein)
	}
}

// oneFood reports whether a serving is of one food and nothing else.
func (s *subject) oneFood() bool {
	rows := s.assay.Serving.Rows
	return !slices.ContainsFunc(rows, func(r ledger.Row) bool { return r.Profile.Food.ID != rows[0].Profile.Food.ID })
}

func weighsWhatWasPoured(s *subject, broken say) {
	d := s.assay.Drink
	if len(d.Finish)+len(d.Garnish)+len(d.Components) > 0 {
		return
	}
	sum, half, ranged := 0.0, 0.0, true
	for _, l := range d.Build {
		if l.Portion != "" || l.Amount.Measure.Kind != unit.Mass {
			return
		}
		sum += l.Amount.Base() / float64(d.Serves)
		half += l.Amount.Half * l.Amount.Measure.Factor / float64(d.Serves)
		ranged = ranged && l.Amount.Half > 0 && !l.Amount.Sigma
	}
	mass := s.assay.Mass
	if math.Abs(sum-mass.Mean) > 1e-6*sum {
		broken(math.Abs(sum/mass.Mean-1), "%.6g g were poured, it weighs %.6g g", sum, mass.Mean)
	}
	if ranged && (mass.Low < (sum-half)*(1-1e-6) || mass.High > (sum+half)*(1+1e-6)) {
		broken(mass.SD/mass.Mean, "%.6g g ± %.3g g were poured, it weighs %.6g to %.6g g", sum, half, mass.Low, mass.High)
	}
}

func aRatioNeedsAcid(s *subject, broken say) {
	s.chemistries(func(of string, c *chemistry.Chemistry) {
		if len(c.Acidity) == 0 || c.BrixAcid.Why != "" || c.BrixAcid.Unit == "" {
			return
		}
		if acidity := c.Acidity[0].Per100g; acidity.Why == "" && acidity.Mean < chemistry.HardlySour {
			broken(1, "°Brix to acidity %.4g of %s, whose acidity is %.3g g/100 g", c.BrixAcid.Mean, of, acidity.Mean)
		}
	})
}

func anOpenPHIsWithheld(s *subject, broken say) {
	s.chemistries(func(of string, c *chemistry.Chemistry) {
		if half := (c.PHMeter.High - c.PHMeter.Low) / 2; !s.read() && c.PHMeter.Why == "" && half > limit("widest")*(1+1e-6) {
			broken(half, "pH %.2f (%.2f–%.2f) of %s", c.PHMeter.Mean, c.PHMeter.Low, c.PHMeter.High, of)
		}
	})
}

// anOpenLiquidHoldsLittleGas asks the foods of a drink: what steps take out of a drink or
// put into it is theirs to say.
func anOpenLiquidHoldsLittleGas(s *subject, broken say) {
	const wet = 0.5 // of a food is water
	for _, r := range s.assay.Serving.Rows {
		gas, most := r.Profile.Cell(constituent.CarbonDioxide), limit("gas in an open liquid")/1000
		if gas.Known || r.Profile.Food.Carbonated() || r.Profile.Cell(constituent.Water).Amount <= wet {
			continue
		}
		if !(gas.Bound <= most) {
			broken(gas.Bound/most, "%s could hold %.3g g of carbon dioxide in a gram", r.Profile.Food.ID, gas.Bound)
		}
	}
}

// aStatedStrengthIsHeld asks spirits whose names state their strength: the whole tolerance of
// the law is wider than a standard deviation of it.
func aStatedStrengthIsHeld(s *subject, broken say) {
	for _, r := range s.assay.Serving.Rows {
		f, alcohol := r.Profile.Food, r.Profile.Cell(constituent.Alcohol)
		vol, stated := food.NamedStrength(f)
		misfit := slices.ContainsFunc(r.Profile.Notes, func(n food.Note) bool { return n.Kind == "strength" })
		if f.Group != "spirit" || !stated || misfit || f.Chemical || alcohol.Amount == 0 {
			continue
		}
		if off := alcohol.SD / alcohol.Amount * vol; off > limit("off a label") {
			broken(off, "%s of %.4g %% vol varies by %.2g", f.ID, vol, off)
		}
	}
}
