package drink

import (
	"github.com/goccy/go-yaml/ast"

	"sipsum/internal/unit"
)

// stepKinds is every step that a drink file can name, in the order of the
// documentation.
var stepKinds = []stepKind{
	stepWith(StepEntry{"reduce", "boil water off: {to: 375 g} or {by: 30 %}; with at: and for: it is known how much sucrose splits", "- reduce: {to: 375 g}"}, grammar[Reduce]{keys: append([]key[Reduce]{
		mass("to", "the mass that is left", func(s *Reduce) **unit.Amount { return &s.To }),
		scaled("by", "the share of the pot's mass that goes", percent, func(s *Reduce) **Quantity { return &s.By }),
	}, boilKeys(func(s *Reduce) *Boil { return &s.Boil })...)}, both(exactlyOne("to", "by"), together("at", "for"))),
	stepWith(StepEntry{"strain", "hold solids back: {collect: 355 g, through: cloth}; through: cloth, paper, metal, sieve or bag", "- strain: {collect: 355 g, through: cloth}"}, strainKeys, nil),
	stepWith(StepEntry{"press", "strain under force: {collect: 300 g, through: cloth}", "- press: {collect: 300 g, through: cloth}"}, strainKeys, nil),
	stepWith(StepEntry{"curdle", "part curd and whey: {collect: 300 g, by: acid}; by: acid or rennet", "- curdle: {collect: 300 g, by: acid}"}, grammar[Curdle]{keys: []key[Curdle]{
		massValue("collect", "the mass of the whey", func(s *Curdle) *unit.Amount { return &s.Collect }),
		word("by", "what curdles it", true, []string{"acid", "rennet"}, func(s *Curdle) *string { return &s.By }),
		scaled("at", "the temperature", temperature, func(s *Curdle) **Quantity { return &s.Temperature }),
	}}, nil),
	clarifyKind,
	stepWith(StepEntry{"brew", "extract coffee or tea: {out: 38 g, strength: 9.5 %}; at: and for: may be told and change no figure", "- brew: {out: 38 g, strength: 9.5 %}"}, grammar[Brew]{keys: append([]key[Brew]{
		mass("out", "the mass in the cup", func(s *Brew) **unit.Amount { return &s.Out }),
		scaled("strength", "dissolved solids in the cup", percent, func(s *Brew) **Quantity { return &s.Strength }),
		scaled("yield", "the share of the dose that is extracted", percent, func(s *Brew) **Quantity { return &s.Yield }),
	}, toldKeys[Brew]()...)}, func(p present) (string, string) {
		switch p.count("out", "strength", "yield") {
		case 2:
			return "", ""
		case 3:
			return "has out, strength and yield", "give two of them, the third follows"
		}
		return "needs two of out, strength and yield", ""
	}),
	stepWith(StepEntry{"steep", "extract and take out again: {ingredients: [5 g core:bay-leaf], at: 90 °C, for: 5 min, collect: 190 g}", "- steep: {ingredients: [5 g core:bay-leaf], at: 90 °C, for: 5 min, collect: 190 g}"}, grammar[Steep]{keys: []key[Steep]{
		someLines[Steep]("ingredients", "what is steeped and taken out again: it does not stand among the ingredients of the pot as well"),
		scaled("at", "the temperature", temperature, func(s *Steep) **Quantity { return &s.Temperature }),
		lasting("for", "how long", func(s *Steep) **Quantity { return &s.Minutes }),
		mass("collect", "the mass that is left", func(s *Steep) **unit.Amount { return &s.Collect }),
	}}, nil),
	addKind,
	chillKind,
	coolKind,
	stepWith(StepEntry{"dilute", "add water: {to: 500 g} or {brix: 12}", "- dilute: {to: 500 g}"}, grammar[Dilute]{keys: []key[Dilute]{
		mass("to", "the mass to reach", func(s *Dilute) **unit.Amount { return &s.To }),
		scaled("brix", "the reading to reach", brixScale, func(s *Dilute) **Quantity { return &s.Brix }),
	}}, exactlyOne("to", "brix")),
	stepWith(StepEntry{"invert", "split sucrose: {share: 40 %} or {ph: 3, at: 90 °C, for: 20 min}", "- invert: {share: 40 %}"}, grammar[Invert]{keys: []key[Invert]{
		scaled("share", "the share of the sucrose that is split", percent, func(s *Invert) **Quantity { return &s.Share }),
		scaled("ph", "the pH of the pot", phScale, func(s *Invert) **Quantity { return &s.PH }),
		scaled("at", "the temperature", temperature, func(s *Invert) **Quantity { return &s.Temperature }),
		lasting("for", "how long", func(s *Invert) **Quantity { return &s.Minutes }),
	}}, func(p present) (string, string) {
		share, hot := p.count("share"), p.count("ph", "at", "for")
		if share+hot/3 != 1 || hot%3 != 0 {
			return "needs share, or ph, at and for together", ""
		}
		return "", ""
	}),
	stepWith(StepEntry{"hydrolyse", "split lactose: {lactose: 90 %}", "- hydrolyse: {lactose: 90 %}"}, grammar[Hydrolyse]{keys: []key[Hydrolyse]{
		scaledValue("lactose", "the share of the lactose that is split", percent, func(s *Hydrolyse) *Quantity { return &s.Lactose }),
	}}, nil),
	convertKind,
	fermentKind,
	stepWith(StepEntry{"caramelise", "burn sugar: {loss: 12 % ± 4 %}, or until dry sugar weighs less: {to: 92 g}", "- caramelise: {loss: 12 % ± 4 %}"}, grammar[Caramelise]{keys: []key[Caramelise]{
		scaled("loss", "the share of the pot's sugars that goes", percent, func(s *Caramelise) **Quantity { return &s.Loss }),
		mass("to", "the mass that is left, without its water", func(s *Caramelise) **unit.Amount { return &s.To }),
	}}, oneAtLeast("loss", "to", "to")),
	stepWith(StepEntry{"concentrate", "take water out without boiling: {by: freezing, to: 300 g}; by: freezing or vacuum", "- concentrate: {by: freezing, to: 300 g}"}, grammar[Concentrate]{keys: append([]key[Concentrate]{
		word("by", "how: by freezing or under vacuum", true, []string{"freezing", "vacuum"}, func(s *Concentrate) *string { return &s.By }),
		massValue("to", "the mass that is left", func(s *Concentrate) *unit.Amount { return &s.To }),
		scaled("at", "how cold the freezer is, −18 °C if it is not stated; under vacuum it changes no figure", around, func(s *Concentrate) **Quantity { return &s.Temperature }),
	}, toldKeys[Concentrate]("at")...)}, nil),
	stepWith(StepEntry{"wash", "move flavour out of a fat and take the fat out again: {fat: 60 g core:butter-unsalted, collect: 350 g}", "- wash: {fat: 60 g core:butter-unsalted, collect: 350 g}"}, grammar[Wash]{keys: []key[Wash]{
		someLines[Wash]("fat", "what flavour moves out of: butter, oil or the like"),
		mass("collect", "the mass that is left", func(s *Wash) **unit.Amount { return &s.Collect }),
	}}, nil),
	stepWith(StepEntry{"heat", "keep it hot: {at: 80 °C, for: 10 min}, or apply published retention factors: {code: \"2151\"}", "- heat: {at: 80 °C, for: 10 min}"}, grammar[Heat]{keys: append([]key[Heat]{
		into("code", "the code of the retention table", false, codeShape, (*reader).code, func(s *Heat) *string { return &s.Code }),
	}, boilKeys(func(s *Heat) *Boil { return &s.Boil })...)}, both(together("at", "for"), oneAtLeast("code", "at and for", "at"))),
	adjustKind,
	stepWith(StepEntry{"split", "keep stated shares: {keep: {FAT: 3 %}, collect: 300 g, because: \"weighed cream\"}", `- split: {keep: {FAT: 3 %}, collect: 300 g, because: "weighed cream"}`}, grammar[Split]{keys: []key[Split]{
		into("keep", "the share of each constituent that is kept", true, mapOf(quantityShape(percent)), (*reader).kept, func(s *Split) *[]Kept { return &s.Keep }),
		mass("collect", "the mass that is left", func(s *Split) **unit.Amount { return &s.Collect }),
		prose("because", "where the shares come from", func(s *Split) *string { return &s.Because }),
	}}, nil),
	stepWith(StepEntry{"carbonate", "dissolve gas: {bottle: 0.5 l, charge: 8 g, at: 4 °C, left: 3.0 g/l ± 0.5 g/l}; bottle is all that it holds, up to the brim", "- carbonate: {bottle: 0.5 l, charge: 8 g, at: 4 °C, left: 3.0 g/l ± 0.5 g/l}"}, grammar[Carbonate]{keys: []key[Carbonate]{
		amount("bottle", "the whole volume of the closed bottle or siphon, up to the brim", volumeOnly, func(s *Carbonate) **unit.Amount { return &s.Bottle }),
		mass("charge", "the mass of CO2", func(s *Carbonate) **unit.Amount { return &s.Charge }),
		scaled("at", "the temperature", temperature, func(s *Carbonate) **Quantity { return &s.Temperature }),
		scaled("left", "what stays in the glass, stated or measured", gas, func(s *Carbonate) **Quantity { return &s.Left }),
	}}, func(p present) (string, string) {
		if closed := p.count("bottle", "charge", "at"); closed%3 != 0 || closed+p.count("left") == 0 {
			return "needs bottle, charge and at together, or left", ""
		}
		return "", ""
	}),
	foamKind,
	treatKind,
	measuredKind,
}

var strainKeys = grammar[Strain]{keys: []key[Strain]{
	massValue("collect", "the mass of the liquor", func(s *Strain) *unit.Amount { return &s.Collect }),
	word("through", "what holds the solids back", true, []string{"cloth", "paper", "metal", "sieve", "bag"}, func(s *Strain) *string { return &s.Through }),
}}

// boilKeys are how hot and how long a pot is kept.
func boilKeys[T any](field func(*T) *Boil) []key[T] {
	return []key[T]{
		scaled("at", "the temperature of the pot", temperature, func(t *T) **Quantity { return &field(t).Temperature }),
		lasting("for", "how long", func(t *T) **Quantity { return &field(t).Minutes }),
	}
}

func exactlyOne(a, b string) func(present) (string, string) {
	return func(p present) (string, string) {
		switch p.count(a, b) {
		case 0:
			return "needs " + a + " or " + b, ""
		case 2:
			return "has " + a + " and " + b, "keep one of them"
		}
		return "", ""
	}
}

// oneAtLeast asks for a key or for others, of which key is one.
func oneAtLeast(a, others, key string) func(present) (string, string) {
	return func(p present) (string, string) {
		if p.count(a, key) == 0 {
			return "needs " + a + " or " + others, ""
		}
		return "", ""
	}
}

func together(a, b string) func(present) (string, string) {
	return func(p present) (string, string) {
		switch {
		case p.count(a, b) != 1:
			return "", ""
		case p.has(a):
			a, b = b, a
		}
		return "has " + b + " without " + a, ""
	}
}

func both(one, other func(present) (string, string)) func(present) (string, string) {
	return func(p present) (string, string) {
		if fault, do := one(p); fault != "" {
			return fault, do
		}
		return other(p)
	}
}

// code reads a code of a table as it is written, a number or not.
func (r *values) code(n ast.Node, what string) string {
	text, ok := r.scalar(n, what)
	if fault, do := textFault(text, what, mostName); ok && fault != "" {
		r.faults.Add(r.nodeAt(n), do, "%s", fault)
	}
	return text
}

// kept reads the shares of split.
func (r *reader) kept(n ast.Node, what string) []Kept {
	var out []Kept
	r.named(n, what, tagFault, func(e entry) {
		if q := r.quantity(e.value, e.key, percent); q != nil {
			out = append(out, Kept{Tag: e.key, Place: e.at, Share: *q})
		}
	})
	if len(out) == 0 && !r.torn {
		r.faults.Add(r.nodeAt(n), "write keep: {FAT: 3 %}", "keep names no constituent")
	}
	return out
}
