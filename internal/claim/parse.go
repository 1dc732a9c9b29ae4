package claim

import (
	"fmt"
	"strconv"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/fail"
	"sipsum/internal/spelling"
	"sipsum/internal/unit"
)

// Parse reads an expression that begins at a place of a file. An error is a *fail.Error at the
// character where it is wrong.
func Parse(text string, at fail.Place) (*Claim, error) {
	c := &Claim{Text: text, place: at}
	f := c.parse(text)
	if f != nil {
		return nil, fail.At(fail.Wrong, c.at(f.at), f.what, f.do)
	}
	return c, nil
}

func (c *Claim) parse(text string) *fault {
	tokens, wrong := lex(text)
	if wrong != nil {
		return wrong
	}
	p := &parser{tokens: tokens}
	e, wrong := p.either()
	switch {
	case wrong != nil:
		return wrong
	case p.now().sort != end:
		return p.unexpected("and here it goes on with "+p.now().said(), "join two conditions with and, or")
	}
	if t, ok := e.(truth); ok {
		if _, isFigure := e.(quantity); !isFigure {
			c.truth, c.terms, c.logic = t, p.terms, logicOf(t)
			return nil
		}
	}
	return &fault{0, "a figure alone checks nothing", "compare it: serving(SUGAR) < 12 g"}
}

// parser reads tokens by recursive descent.
type parser struct {
	tokens []token
	i      int
	terms  int
	depth  int
}

func (p *parser) now() token { return p.tokens[p.i] }

func (p *parser) next() token {
	t := p.tokens[p.i]
	if t.sort != end {
		p.i++
	}
	return t
}

// take goes on if the token reads so.
func (p *parser) take(s sort, text string) bool {
	if t := p.now(); t.sort == s && strings.EqualFold(t.text, text) {
		p.i++
		return true
	}
	return false
}

func (p *parser) unexpected(what, do string) *fault { return &fault{p.now().at, what, do} }

// node is a quantity or a truth.
type node interface{ where() int }

func (p *parser) either() (node, *fault) { return p.join("or", p.both) }
func (p *parser) both() (node, *fault)   { return p.join("and", p.denied) }

// join reads truths with a word between them.
func (p *parser) join(by string, part func() (node, *fault)) (node, *fault) {
	a, wrong := part()
	for wrong == nil && (p.now().sort == word && strings.EqualFold(p.now().text, by)) {
		at := p.next().at
		var b node
		if b, wrong = part(); wrong != nil {
			return nil, wrong
		}
		for _, side := range []node{a, b} {
			if q, ok := side.(quantity); ok {
				return nil, &fault{q.where(), "a figure alone stands beside \"" + by + "\"", "compare it first: serving(SUGAR) < 12 g " + by + " ph() < 4"}
			}
		}
		if p.terms++; p.terms > mostTerms() {
			return nil, tooLong(at)
		}
		a = joined{by == "and", a, b}
	}
	return a, wrong
}

// mostTerms is the cost limit: how many figures, numbers and signs an expression may have.
func mostTerms() int { return int(unit.LimitOf("terms of a claim", "").High) }

func tooLong(at int) *fault {
	return &fault{at, fmt.Sprintf("the claim has more than %d terms", mostTerms()), "split it into several claims"}
}

func (p *parser) denied() (node, *fault) {
	if !p.take(word, "not") {
		return p.condition()
	}
	if p.depth++; p.depth > mostTerms() {
		return nil, tooLong(p.now().at)
	}
	a, wrong := p.denied()
	if wrong != nil {
		return nil, wrong
	}
	if q, ok := a.(quantity); ok {
		return nil, &fault{q.where(), "not stands before a figure", "deny a condition: not ph() < 3"}
	}
	return denial{a}, nil
}

var orders = map[string]bool{"<": true, "<=": true, ">": true, ">=": true}

func (p *parser) condition() (node, *fault) {
	a, wrong := p.sum()
	if wrong != nil {
		return nil, wrong
	}
	first, isFigure := a.(quantity)
	if p.take(word, "between") {
		if !isFigure {
			return nil, &fault{a.where(), "between follows a condition", "write a figure before it: ph() between 3.6 and 4.2"}
		}
		return p.between(first)
	}
	c := comparison{terms: []quantity{first}}
	for p.now().sort == sign && orders[p.now().text] {
		if !isFigure {
			return nil, &fault{a.where(), "a condition is compared", "join two with and: 1 g < serving(SUGAR) and serving(SUGAR) < 5 g"}
		}
		order := p.next()
		b, wrong := p.figure()
		if wrong != nil {
			return nil, wrong
		}
		last := c.terms[len(c.terms)-1]
		if last, b, wrong = alike(last, b, order.at); wrong != nil {
			return nil, wrong
		}
		c.terms[len(c.terms)-1] = last
		c.terms, c.orders = append(c.terms, b), append(c.orders, order.text)
	}
	if t := p.now(); t.sort == sign && (t.text == "=" || t.text == "==" || t.text == "!=") {
		return nil, &fault{t.at, "no figure is known so exactly that it equals another", "say how near: ph() between 3.6 and 3.8"}
	}
	if len(c.orders) == 0 {
		return a, nil
	}
	return c, nil
}

func (p *parser) between(first quantity) (node, *fault) {
	at := p.now().at
	low, wrong := p.figure()
	if wrong != nil {
		return nil, wrong
	}
	if !p.take(word, "and") {
		return nil, p.unexpected("between has one end", "write both: ph() between 3.6 and 4.2")
	}
	high, wrong := p.figure()
	if wrong != nil {
		return nil, wrong
	}
	if low, first, wrong = alike(low, first, at); wrong != nil {
		return nil, wrong
	}
	if first, high, wrong = alike(first, high, at); wrong != nil {
		return nil, wrong
	}
	if a, ok := low.(literal); ok {
		if b, ok := high.(literal); ok && a.value > b.value {
			return nil, &fault{a.at, "nothing lies between a larger and a smaller figure", "write the smaller one first"}
		}
	}
	return comparison{[]quantity{low, first, high}, []string{"<=", "<="}}, nil
}

// alike lets two figures be compared or added, or says why they are unlike. A number without
// a unit may be a pH, degrees Brix or a place, a per cent a sweetness.
func alike(a, b quantity, at int) (quantity, quantity, *fault) {
	a, b = as(a, b.of()), as(b, a.of())
	if a.of() != b.of() {
		return nil, nil, &fault{at, "the two sides are unlike: " + a.of().said() + " and " + b.of().said(), "give both in the same: " + inVolume(a, b)}
	}
	return a, b, nil
}

func as(q quantity, d dimension) quantity {
	if l, ok := q.(literal); ok && d.takes(l) {
		l.is = d
		return l
	}
	return q
}

// inVolume shows the comparison of an acidity with a per cent, which a sheet prints in 100 g and is no mass in a
// volume, as it would be of 100 ml; else any example.
func inVolume(a, b quantity) string {
	for _, pair := range [][2]quantity{{a, b}, {b, a}} {
		f, isFigure := pair[0].(figure)
		l, isNumber := pair[1].(literal)
		if isFigure && isNumber && f.of() == concentration && l.is == plain && !l.bare {
			perLitre := strconv.FormatFloat(l.value*unit.Kilo, 'g', 4, 64)
			return f.function.shape + " is compared with " + perLitre + " g/l: per cent are printed of 100 g, and this is of a volume"
		}
	}
	return exampleOf(a, b)
}

// exampleOf shows a comparison of the side that is no number.
func exampleOf(a, b quantity) string {
	for _, q := range []quantity{a, b} {
		if f, ok := q.(figure); ok {
			if sample, ok := map[dimension]string{ofMass: "12 g", ofVolume: "60 ml", ofEnergy: "90 kJ", plain: "0.5 or 50 %", concentration: "6 g/l", ofPH: "3.8", ofBrix: "14", ofSweetness: "9 %, or 90 g/l", ofPlace: "10"}[f.of()]; ok {
				return f.function.shape + " is compared with " + sample
			}
		}
	}
	return "12 g with 12 g"
}

// figure reads a sum that is one.
func (p *parser) figure() (quantity, *fault) {
	a, wrong := p.sum()
	if wrong != nil {
		return nil, wrong
	}
	if q, ok := a.(quantity); ok {
		return q, nil
	}
	return nil, &fault{a.where(), "a condition stands where a figure was meant", "write a figure: 12 g, or serving(SUGAR)"}
}

func (p *parser) sum() (node, *fault)     { return p.series("+-", p.product) }
func (p *parser) product() (node, *fault) { return p.series("*/", p.factor) }

// series reads figures with signs between them.
func (p *parser) series(signs string, part func() (node, *fault)) (node, *fault) {
	a, wrong := part()
	for wrong == nil && p.now().sort == sign && strings.Contains(signs, p.now().text) {
		op := p.next()
		b, fault := part()
		if fault != nil {
			return nil, fault
		}
		x, okX := a.(quantity)
		y, okY := b.(quantity)
		if !okX || !okY {
			return nil, p.conditionAdded(op)
		}
		a, wrong = calculated(x, y, op)
	}
	return a, wrong
}

func (p *parser) conditionAdded(op token) *fault {
	return &fault{op.at, "a condition cannot be calculated with", "calculate with figures: serving(GLUS) + serving(FRUS) < 8 g"}
}

func calculated(x, y quantity, op token) (node, *fault) {
	switch op.text {
	case "*":
		return arithmetic{op.text, x, y, x.of().times(y.of(), 1)}, nil
	case "/":
		if by, ok := constant(y); ok && by == 0 {
			return nil, &fault{y.where(), "nothing can be divided by nothing", "divide by a figure above 0, or leave the division out"}
		}
		return arithmetic{op.text, x, y, x.of().times(y.of(), -1)}, nil
	}
	x, y, wrong := alike(x, y, op.at)
	if wrong != nil {
		return nil, wrong
	}
	return arithmetic{op.text, x, y, x.of()}, nil
}

// constant gives the value of what has no figure of the drink in it.
func constant(q quantity) (float64, bool) {
	switch q := q.(type) {
	case literal:
		return q.value, true
	case arithmetic:
		a, okA := constant(q.a)
		b, okB := constant(q.b)
		return map[string]float64{"+": a + b, "-": a - b, "*": a * b, "/": a / b}[q.sign], okA && okB
	}
	return 0, false
}

func (p *parser) factor() (node, *fault) {
	if p.terms++; p.terms > mostTerms() {
		return nil, tooLong(p.now().at)
	}
	switch t := p.now(); {
	case p.take(sign, "-"):
		a, wrong := p.factor()
		if wrong != nil {
			return nil, wrong
		}
		q, ok := a.(quantity)
		if !ok {
			return nil, p.conditionAdded(t)
		}
		return arithmetic{"-", literal{is: q.of(), at: t.at}, q, q.of()}, nil
	case p.take(sign, "("):
		if p.depth++; p.depth > mostTerms() {
			return nil, tooLong(t.at)
		}
		a, wrong := p.either()
		if wrong == nil && !p.take(sign, ")") {
			wrong = &fault{t.at, "a bracket is opened and not closed", "close it with )"}
		}
		return a, wrong
	case t.sort == number:
		p.next()
		return literally(t)
	case t.sort == word && !reserved[strings.ToLower(t.text)]:
		p.next()
		return p.call(t)
	case t.sort == quote:
		return nil, p.unexpected("a name stands alone", "say what of it: share(MALAC, "+t.said()+") >= 50 %")
	}
	return nil, p.unexpected(p.now().said()+" stands where a figure was meant", "write a figure: serving(SUGAR), ph(), or 12 g")
}

func literally(t token) (node, *fault) {
	x, _, err := unit.ParseNumber(t.text)
	if err != nil {
		f := err.(*fail.Error).Faults[0]
		return nil, &fault{t.at, f.What, f.Do}
	}
	d, factor, ok := measure(t.unit)
	if !ok {
		return nil, &fault{t.at, fmt.Sprintf("there is no unit %q for a figure", t.unit), "use g, mg, µg, ml, l, g/l, kJ, kcal, %, % vol or °Bx"}
	}
	return literal{x * factor, d, t.unit == "", t.at, strings.TrimSpace(t.text + " " + t.unit), t.unit}, nil
}

// call reads the arguments of a function.
func (p *parser) call(name token) (node, *fault) {
	f, asks := functionOf(strings.ToLower(name.text)), strings.EqualFold(name.text, "contains")
	if f == nil && !asks {
		do := "use one of: " + strings.Join(functionNames(), ", ")
		if _, err := constituent.Read(name.text, constituent.OfDrinks); err == nil {
			do = "say of what: serving(" + name.text + "), per100ml(" + name.text + ")"
		} else if near := spelling.Nearest(name.text, functionNames()); len(near) > 0 {
			do = "did you mean " + near[0] + "()?"
		}
		return nil, &fault{name.at, "there is no figure \"" + name.text + "\"", do}
	}
	if !p.take(sign, "(") {
		return nil, p.unexpected(name.text+" wants brackets", "write "+shapeOf(f))
	}
	if asks {
		t := p.next()
		if t.sort != quote && t.sort != word || !p.take(sign, ")") {
			return nil, &fault{t.at, "contains takes one allergen", "write " + shapeOf(f)}
		}
		return contained{t.text, t.at}, nil
	}
	out := figure{function: f, at: name.at}
	for i, takes := range f.takes {
		if i > 0 && !p.take(sign, ",") {
			return nil, p.unexpected(name.text+" takes "+fmt.Sprint(len(f.takes))+" things, with a comma between", "write "+f.shape)
		}
		var wrong *fault
		switch takes {
		case 't':
			wrong = p.tag(&out)
		case 'f':
			wrong = p.food(&out)
		default:
			wrong = p.part(&out)
		}
		if wrong != nil {
			return nil, wrong
		}
	}
	if !p.take(sign, ")") {
		return nil, p.unexpected(name.text+" is not closed after what it takes", "write "+f.shape)
	}
	return out, nil
}

func shapeOf(f *function) string {
	if f == nil {
		return `contains("milk")`
	}
	return f.shape
}

// tag reads a constituent: a tagname, or words, quoted or not.
func (p *parser) tag(f *figure) *fault {
	first := p.now()
	var words []string
	for p.now().sort == word || p.now().sort == quote || p.now().sort == sign && p.now().text == "-" || p.now().sort == number {
		words = append(words, p.next().text)
	}
	if len(words) == 0 {
		return p.unexpected("a constituent is missing", "write "+f.function.shape)
	}
	c, err := constituent.Read(strings.Join(words, " "), constituent.OfDrinks)
	if err != nil {
		e := err.(*fail.Error).Faults[0]
		return &fault{first.at, e.What, e.Do}
	}
	if f.tags = append(f.tags, c); amountOf(f.tags[:1]) != amountOf(f.tags[len(f.tags)-1:]) {
		return &fault{first.at, "a ratio is of two masses or of two energies", "write ratio(MALAC, CITAC)"}
	}
	return nil
}

// part reads a part of the drink.
func (p *parser) part(f *figure) *fault {
	f.partAt = p.now().at
	for _, s := range []PartSort{OfComponent, OfIngredient, OfKind} {
		if p.now().sort == word && strings.EqualFold(p.now().text, string(s)) && p.tokens[p.i+1].sort == quote {
			p.next()
			f.part.Sort = s
		}
	}
	t := p.next()
	if t.sort != quote || t.text == "" {
		what := "the name of a part stands in quotation marks"
		if len(f.function.takes) > 1 && f.function.takes[0] == 'p' {
			what = f.function.name + " takes the name of a part first, in quotation marks, then the constituent"
		}
		return &fault{t.at, what, "write " + f.function.shape}
	}
	if f.part.Sort == "" {
		f.part.Sort = Named
	}
	f.part.Name = t.text
	return nil
}

// food reads the food of a table: its code, or its whole name.
func (p *parser) food(f *figure) *fault {
	t := p.next()
	if t.sort != quote || t.text == "" {
		return &fault{t.at, "a food stands in quotation marks", "write " + f.function.shape}
	}
	f.food, f.partAt = t.text, t.at
	return nil
}
