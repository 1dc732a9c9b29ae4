package allergen

import (
	"fmt"
	"slices"
	"sync"

	"sipsum/internal/embedded"
	"sipsum/internal/estimate"
)

// limit is how much of a constituent makes a class to be declared.
type limit struct {
	class       string
	constituent string
	above       bool // more than the limit; else the limit itself counts too
	most        float64
	unit        string
	source      string
	status      string
}

var limits = sync.OnceValue(func() map[string][]limit {
	byRules := map[string][]limit{}
	for _, row := range embedded.Rows("allergen_limits.csv") {
		relation := row.Text("relation")
		if relation != "above" && relation != "from" {
			row.Fail("relation %s", relation)
		}
		byRules[row.Text("rules")] = append(byRules[row.Text("rules")], limit{
			class: row.Text("class"), constituent: row.Text("constituent"), above: relation == "above",
			most: row.Number("limit"), unit: row.Text("unit"), source: row.Text("source"), status: row.Text("status"),
		})
	}
	return byRules
})

// Measured names the constituent whose amount decides a class under a set of rules, empty
// if there is none.
func Measured(rules string) string {
	for _, l := range limits()[rules] {
		return l.constituent
	}
	return ""
}

// Verdict is what the amount of a constituent makes of a class.
type Verdict string

// The verdicts.
const (
	VerdictDeclare Verdict = "declare"         // it is, or may well be, as much as the rules ask for
	VerdictBelow   Verdict = "below the limit" // all of it is known or bounded, and it is not
	VerdictOpen    Verdict = "not known"       // part of it is unknown: a question, never silence
)

// Amounts is how much of the constituent is in a drink, in mg.
type Amounts struct {
	PerKg, PerLitre estimate.Amount
}

// of gives the amount in the unit of a limit.
func (a Amounts) of(unit string) estimate.Amount {
	if unit == "mg/l" {
		return a.PerLitre
	}
	return a.PerKg
}

// passes reports whether a figure is as much as the limit asks for.
func (l limit) passes(x float64) bool { return x > l.most || !l.above && x == l.most }

// judge gives the verdict of one limit: the upper end of what is known decides, and what
// nobody knows leaves it open.
func (l limit) judge(a estimate.Amount) Verdict {
	switch {
	case l.passes(a.KnownMost()):
		return VerdictDeclare
	case !a.Known || !a.Bounded() || !(a.Most() < l.most || l.above && a.Most() == l.most):
		return VerdictOpen
	}
	return VerdictBelow
}

// Judge says what the sulphur dioxide of a drink makes of the class under a set of rules,
// with the figure that decides. Of two limits the more cautious verdict holds.
func Judge(rules string, a Amounts) (v Verdict, because string) {
	v = VerdictOpen
	for i, l := range limits()[rules] {
		is := l.judge(a.of(l.unit))
		switch {
		case is == VerdictDeclare && v != VerdictDeclare, i == 0, is == VerdictOpen && v == VerdictBelow:
			v, because = is, l.because(is, a.of(l.unit))
		}
	}
	return v, because
}

// because gives the figure beside its limit.
func (l limit) because(v Verdict, a estimate.Amount) string {
	relation := "from"
	if l.above {
		relation = "above"
	}
	switch v {
	case VerdictDeclare:
		return fmt.Sprintf("up to %.3g %s of total sulphur dioxide in the drink; to be declared %s %g %s", a.KnownMost(), l.unit, relation, l.most, l.unit)
	case VerdictBelow:
		return fmt.Sprintf("at most %.3g %s of total sulphur dioxide in the drink; to be declared %s %g %s", a.Most(), l.unit, relation, l.most, l.unit)
	}
	return "nobody has stated the sulphur dioxide of all that is in the drink"
}

// Judged gives the declaration with what the amount of sulphur dioxide makes of it. Enough
// of it is declared whatever the foods are called; less than the limit, all of it known, is
// moved to what the rules take out; what is not known changes nothing, so that whoever is
// said to hold it still does.
func (d Declaration) Judged(a Amounts) Declaration {
	verdict, because := Judge(d.Rules, a)
	if verdict == VerdictOpen {
		return d
	}
	l := limits()[d.Rules][0]
	i := slices.IndexFunc(d.Contains, func(e Entry) bool { return e.Code == l.class })
	switch {
	case verdict == VerdictDeclare && i < 0:
		b := newBook(d.Rules)
		b.entry(l.class, l.class)
		d.Contains = append(slices.Clone(d.Contains), b.entries()...)
		slices.SortStableFunc(d.Contains, func(x, y Entry) int {
			return place(known().classes[d.Rules], x.Code) - place(known().classes[d.Rules], y.Code)
		})
		i = slices.IndexFunc(d.Contains, func(e Entry) bool { return e.Code == l.class })
		d.Contains[i].Note = because
	case verdict == VerdictDeclare:
		d.Contains = slices.Clone(d.Contains)
		d.Contains[i].Note = because
	case i >= 0:
		e := d.Contains[i]
		e.Note, e.Source, e.Status = because, l.source, l.status
		d.Contains = slices.Delete(slices.Clone(d.Contains), i, i+1)
		d.Excepted = append(slices.Clone(d.Excepted), e)
	}
	d.Check = settled(d.Rules, d.Check, l.class)
	return d
}

// settled takes a leaf out of the questions.
func settled(rules string, checks []Check, leaf string) []Check {
	left := []Check{}
	for _, c := range checks {
		if c.Code == CheckPossible || c.Code == CheckLent {
			c.Leaves = slices.DeleteFunc(slices.Clone(c.Leaves), func(code string) bool { return code == leaf })
			if len(c.Leaves) == 0 {
				continue
			}
			c.name(rules)
		}
		left = append(left, c)
	}
	return left
}
