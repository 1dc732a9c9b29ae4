package nutritionclaim

import (
	"math"
	"slices"
	"strings"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/unit"
)

// Verdict is what the rules make of a claim.
type Verdict string

// The verdicts, from the best to the worst.
const (
	Allowed    Verdict = "allowed"
	NotYet     Verdict = "not allowed yet"
	Undecided  Verdict = "cannot be decided"
	NotAllowed Verdict = "not allowed"
)

var order = []Verdict{Allowed, NotYet, Undecided, NotAllowed}

// Claim is a claim as it is judged.
type Claim struct {
	Name       string
	Verdict    Verdict
	Why        string // the deciding number with its unit and limit
	Short      string // the same in a few words
	Near       bool   // not allowed, and not far from it
	Implied    bool   // allowed, and a claim that says more is allowed too
	Disclosure string // to print with it
	Status     string // of its legal reference: verified, secondary or unverified
	Source     string
}

// judged is a condition, or a way, as it turned out.
type judged struct {
	verdict Verdict
	near    bool
	why     string
	short   string
	marks   []string
	status  string
	sources []string
}

// nearness is the factor off its limit up to which a figure is near.
var nearness = sync.OnceValue(func() float64 {
	for _, r := range embedded.Rows("claim_limits.csv") {
		if r.Text("limit") == "near miss" {
			return r.Number("value")
		}
	}
	panic("nutritionclaim: claim_limits.csv has no near miss")
})

// Judge gives every claim of the rules in the order of the data, with its verdict.
func Judge(in Input) []Claim {
	set := rulesets()[in.Rules]
	if set == nil {
		return nil
	}
	list := make([]Claim, len(set.claims))
	for i, k := range set.claims {
		list[i] = in.judge(k, set.always)
	}
	allowed := func(name string) bool {
		return slices.ContainsFunc(list, func(c Claim) bool { return c.Name == name && c.Verdict == Allowed })
	}
	for i, k := range set.claims {
		more := allowed(k.stronger)
		list[i].Implied, list[i].Near = more && list[i].Verdict == Allowed, list[i].Near && !more
		if text := in.disclosure(k, allowed); text != "" {
			list[i].Disclosure = strings.TrimSuffix(text+"; "+list[i].Disclosure, "; ")
		}
	}
	return list
}

// judge decides a claim by the best of its ways.
func (in Input) judge(k *claim, always []condition) Claim {
	var ways []string
	for _, c := range k.conditions {
		ways = merged(ways, []string{c.way})
	}
	var best judged
	for i, way := range ways {
		conditions := slices.Clone(always)
		for _, c := range k.conditions {
			if c.way == way {
				conditions = append(conditions, c)
			}
		}
		if j := in.together(conditions); i == 0 || slices.Index(order, j.verdict) < slices.Index(order, best.verdict) {
			best = j
		}
	}
	c := Claim{Name: k.name, Verdict: best.verdict, Why: best.why, Short: best.short, Near: best.near && best.verdict != Allowed, Status: best.status, Source: strings.Join(best.sources, "; ")}
	c.Disclosure = strings.Join(best.marks, "; ")
	if k.provided != "" && best.verdict == Allowed {
		c.Why += "; " + k.provided
	}
	return c
}

// together joins conditions that must all hold: the worst verdict counts and gives the
// reason; of those that hold, each does. The strength of a drink without alcohol is no reason.
func (in Input) together(conditions []condition) judged {
	all := judged{verdict: Allowed, near: true}
	var why, short []string
	for i := range conditions {
		c := &conditions[i]
		j := in.hold(c)
		all.status, all.sources = worse(all.status, j.status), merged(all.sources, j.sources)
		all.near = all.near && (j.near || j.verdict == Allowed)
		all.marks = merged(all.marks, j.marks)
		switch {
		case slices.Index(order, j.verdict) > slices.Index(order, all.verdict):
			all.verdict, why, short = j.verdict, []string{j.why}, []string{j.short}
		case j.verdict == all.verdict && j.why != "" && !(c.basis == ofDrink && j.verdict == Allowed):
			why, short = append(why, j.why), append(short, j.short)
		}
	}
	all.why, all.short = strings.Join(why, "; "), strings.Join(short, "; ")
	return all
}

// hold judges one condition.
func (in Input) hold(c *condition) judged {
	if c.basis == ofIngredients {
		return in.holdFoods(c)
	}
	figures, missing := in.figures(c)
	if missing != "" {
		return judged{verdict: Undecided, why: missing, short: missing, status: c.status, sources: []string{c.source}}
	}
	all := judged{verdict: Allowed, near: true, status: c.status, sources: []string{c.source}}
	for i, m := range figures {
		verdict, near := c.decide(m.Figure)
		all.near = all.near && (near || verdict == Allowed)
		if m.source != "" {
			all.status, all.sources = worse(all.status, m.status), merged(all.sources, []string{m.source})
		}
		worst := slices.Index(order, verdict) > slices.Index(order, all.verdict)
		if i == 0 || worst || verdict == all.verdict && c.tighter(m.Figure, figures[:i]) {
			all.verdict = verdict
			all.why, all.short = c.tell(m, verdict)
		}
	}
	return all
}

// tighter reports whether a figure is nearer to the limit than those before it.
func (c *condition) tighter(f Figure, before []measured) bool {
	return !slices.ContainsFunc(before, func(m measured) bool {
		if c.is == atLeast {
			return m.Mean <= f.Mean
		}
		return m.Mean >= f.Mean
	})
}

// How a figure is compared with its limit.
const (
	atMost  = "at most"
	below   = "below"
	atLeast = "at least"
)

// decide judges a figure at the end of its interval that is against the claim, and says
// whether its central value is near the limit.
func (c *condition) decide(f Figure) (verdict Verdict, near bool) {
	slack := unit.Closeness * c.limit
	within := func(x float64) bool { // false for NaN
		if c.is == below {
			return x < c.limit-slack
		}
		return x <= c.limit+slack
	}
	if c.is == atLeast {
		near = f.Known && f.Mean >= c.limit/nearness()
		switch reaches := func(x float64) bool { return x >= c.limit-slack }; {
		case reaches(f.Low) && f.Known:
			return Allowed, near
		case reaches(f.Mean) && f.Known:
			return NotYet, near
		case f.partly() && !(f.Most < c.limit-slack): // NaN too
			return Undecided, near
		}
		return NotAllowed, near
	}
	near = f.Known && f.Mean <= c.limit*nearness()
	switch {
	case within(f.Most):
		return Allowed, near
	case f.Known && !within(f.Mean):
		return NotAllowed, near
	case f.Known && !within(f.High) && !math.IsNaN(f.Most):
		return NotYet, near
	}
	return Undecided, near
}

// holdFoods judges a condition of ingredients.
func (in Input) holdFoods(c *condition) judged {
	j := judged{verdict: Allowed, status: c.status, sources: []string{c.source}}
	against, asked := search(c.foods, in.Foods)
	switch {
	case c.is == asNamed:
		if len(against) > 0 {
			j.marks = []string{strings.ReplaceAll(c.mark, "{}", strings.Join(against, ", "))}
		}
	case len(against) > 0:
		j.verdict, j.why = NotAllowed, c.word+": "+strings.Join(against, ", ")
		j.short = j.why
	case len(asked) > 0:
		j.verdict, j.near, j.why = Undecided, true, "whether it is "+c.word+" is for the maker to say: "+strings.Join(asked, ", ")
		j.short = "is it " + c.word + "? " + strings.Join(asked, ", ")
	}
	return j
}

// disclosure gives what stands with a claim.
func (in Input) disclosure(k *claim, allowed func(string) bool) string {
	if k.conditions[0].is == asNamed {
		return ""
	}
	when, what, _ := strings.Cut(k.disclose, " ")
	switch {
	case when == "if" && in.Per100g.of(constituent.ID(what)).Most == 0, when == "unless" && allowed(what):
		return ""
	}
	return k.disclosure
}
