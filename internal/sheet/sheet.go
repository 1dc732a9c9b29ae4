package sheet

import (
	"sipsum/internal/allergen"
	"sipsum/internal/assay"
	"sipsum/internal/caution"
	"sipsum/internal/evidence"
	"sipsum/internal/label"
	"sipsum/internal/source"
)

// Sheet is everything about one drink.
type Sheet struct {
	Program   string // "sipsum 0.1.0"
	Tables    []source.Table
	Assay     *assay.Assay
	Evidence  evidence.View
	Works     []source.Work // behind the figures, in order of first use
	PHWorks   PHWorks
	Rules     []string          // label rules, in the order asked for
	Cards     []label.Card      // one for each of Rules
	Workings  [][]label.Working // how each card's figures came about
	Allergens []Declaration     // one for each of Rules
}

// Declaration is what must be said of allergens, and what may hurt, under one
// set of rules.
type Declaration struct {
	allergen.Declaration
	Cautions []caution.Caution
}

// Build gathers what the domain packages say of an assay. Without rules it
// takes the drink's own.
func Build(program string, a *assay.Assay, tables []source.Table, works evidence.Works, rules []string) (*Sheet, error) {
	s := &Sheet{Program: program, Assay: a, Evidence: evidence.Of(a, works), Rules: rules}
	if len(s.Rules) == 0 {
		s.Rules = texts(a.Drink.Rules)
	}
	if len(s.Rules) == 0 {
		s.Rules = label.Usual()
	}
	facts := factsOf(a)
	for _, r := range s.Rules {
		card, err := label.Make(r, facts)
		if err != nil {
			return nil, err
		}
		workings, err := label.Explain(r, facts)
		if err != nil {
			return nil, err
		}
		declaration, err := declare(r, a, facts)
		if err != nil {
			return nil, err
		}
		s.Cards, s.Workings = append(s.Cards, card), append(s.Workings, workings)
		s.Allergens = append(s.Allergens, declaration)
	}
	s.cite(tables)
	s.PHWorks = phWorksOf(a, works)
	return s, nil
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

// NotAssessed reports whether a food of the drink has allergens that nobody has
// looked for: somebody has to decide.
func (s *Sheet) NotAssessed() bool {
	for _, d := range s.Allergens {
		for _, c := range d.Check {
			if c.Code == allergen.CheckNotAssessed {
				return true
			}
		}
	}
	return false
}
