package sheet

import (
	"fmt"
	"slices"
	"strings"
	"sync"

	"sipsum/internal/allergen"
	"sipsum/internal/assay"
	"sipsum/internal/caution"
	"sipsum/internal/claims"
	"sipsum/internal/evidence"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/houserules"
	"sipsum/internal/label"
	"sipsum/internal/ladder"
	"sipsum/internal/minutes"
	"sipsum/internal/nutritionclaim"
	"sipsum/internal/source"
	"sipsum/internal/taste"
)

// Sheet is everything about one drink. What hangs on label rules is made when it is asked
// for, and once: an assay prints none of it.
type Sheet struct {
	Program  string // "sipsum 0.1.0"
	Proof    string // the short digest of its proof pack; empty: of what no file is
	Tables   []source.Table
	Assay    *assay.Assay
	Evidence evidence.View
	Works    []source.Work      // behind the figures, in order of first use
	Said     []claims.Said      // the claims of the drink with their verdicts, once they are judged
	Change   *Change            // the one worth making, once it was looked for; nil: none
	House    *houserules.Answer // to house rules, once they are judged; nil if there are none
	PHWorks  PHWorks
	Rules    []string // label rules, in the order asked for

	tastes func() taste.Profile   // of what is liquid in a serving
	course func() *minutes.Course // of it while it stands; nil: nobody asked for its chemistry
	works  evidence.Works

	naming sync.Once
	named  map[food.ID]string // see words

	Cards     func() []label.Card      // one for each of Rules
	Workings  func() [][]label.Working // how each card's figures came about
	Allergens func() []Declaration     // one for each of Rules
}

// Build gathers what the domain packages say of an assay. Without rules it
// takes the drink's own.
func Build(program string, a *assay.Assay, tables []source.Table, works evidence.Works, rules []string) (*Sheet, error) {
	s := &Sheet{Program: program, Assay: a, Evidence: evidence.Of(a, works), Rules: rules, works: works}
	s.tastes = sync.OnceValue(func() taste.Profile { return taste.Of(a.Glass()) })
	s.course = sync.OnceValue(func() *minutes.Course {
		if a.Chemistry == nil {
			return nil
		}
		return minutes.Of(a.Standing())
	})
	if len(s.Rules) == 0 {
		s.Rules = texts(a.Drink.Rules)
	}
	if len(s.Rules) == 0 {
		s.Rules = label.Usual()
	}
	if err := s.checkRules(); err != nil {
		return nil, err
	}
	items := allergen.Assessed(itemsOf(a))
	declared := sync.OnceValue(func() []allergen.Item { return slices.Concat(items, treatedWith(a, items)) })
	if err := allergen.CheckCodes(items, texts(a.Drink.MayContain)); err != nil {
		return nil, err
	}
	facts := sync.OnceValue(func() label.Facts { return factsOf(a) })
	claimed := sync.OnceValue(func() nutritionclaim.Input { return claimInput(a, facts()) })
	s.Cards = under(s.Rules, func(r string) (label.Card, error) {
		c, err := label.Make(r, facts())
		if err == nil {
			claim(&c, claimed())
		}
		return c, err
	})
	s.Workings = under(s.Rules, func(r string) ([]label.Working, error) { return label.Explain(r, facts()) })
	hurts := sync.OnceValue(func() caution.Drink { return warned(a, facts(), items) })
	s.Allergens = under(s.Rules, func(r string) (Declaration, error) { return declare(r, a, facts(), hurts(), declared()) })
	s.cite(tables)
	s.PHWorks = phWorksOf(a, works)
	return s, nil
}

// words give each food of the serving the word by which a bar tells it from the others.
func (s *Sheet) words() map[food.ID]string {
	s.naming.Do(func() { s.named = ladder.Words(s.Assay.Serving) })
	return s.named
}

// checkRules drops rules that are asked for twice, and names all that have no card at once.
func (s *Sheet) checkRules() error {
	var once, missing []string
	for _, r := range s.Rules {
		switch {
		case slices.Contains(once, r):
			continue
		case !slices.Contains(label.Rules(), r):
			missing = append(missing, fmt.Sprintf("%q", r))
		}
		once = append(once, r)
	}
	s.Rules = once
	if len(missing) > 0 {
		return fail.New(fail.Wrong, "no card rules "+strings.Join(missing, ", "), "use one of: "+strings.Join(label.Rules(), ", "))
	}
	return label.Check(once[0], label.Facts{ServingG: s.Assay.Mass.Mean})
}

// under makes something under each set of rules, when it is asked for and once. Nothing can
// fail any more: Build has checked the rules and the codes.
func under[T any](rules []string, make func(string) (T, error)) func() []T {
	return sync.OnceValue(func() []T {
		var list []T
		for _, r := range rules {
			made, err := make(r)
			if err != nil {
				panic("sheet: " + r + ": " + err.Error())
			}
			list = append(list, made)
		}
		return list
	})
}

// cite lists the tables that the drink's foods come from and the works behind
// its evidence.
func (s *Sheet) cite(tables []source.Table) {
	used := map[string]bool{}
	for _, item := range s.Assay.Items {
		used[item.Food.ID.Table] = true
	}
	for _, row := range s.Assay.Serving.Rows {
		if lender := row.Profile.Lender; lender != nil {
			used[lender.ID.Table] = true
		}
	}
	for _, t := range tables {
		if used[t.ID] {
			s.Tables = append(s.Tables, t)
		}
	}
	seen := map[string]bool{}
	for _, c := range s.Evidence.Categories {
		for _, e := range c.Entries {
			for _, w := range e.Works {
				if !seen[w.ID+w.Citation] {
					seen[w.ID+w.Citation] = true
					s.Works = append(s.Works, w)
				}
			}
		}
	}
}
