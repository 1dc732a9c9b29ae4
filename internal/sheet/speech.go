package sheet

import (
	"path/filepath"
	"slices"
	"strings"

	"sipsum/internal/claims"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/evidence"
	"sipsum/internal/food"
	"sipsum/internal/source"
	"sipsum/internal/speech"
)

// SpeechMeans says what a speech is to this sheet.
const SpeechMeans = "Numbers in brackets name the sources and are not spoken. A range holds in nine of ten draws, with what nobody has measured at its most. A pH is a meter's, at 25 °C. A threshold is other people's tongues, in water or in one drink: taste your own. " +
	"What is said of allergens is what is known of the foods: whoever sells the drink answers for it."

// SpeechOf makes a barista's speech about a drink in one register. Its claims were judged.
func SpeechOf(of *Sheet, register speech.Register) speech.Speech {
	s := &speaker{briefing: briefing{of}, register: register, brief: BriefOf(of), words: of.words()}
	for _, line := range Contradictions(of) {
		s.unspoken = append(s.unspoken, speech.Left{Kind: "contradiction", Text: line, Why: say("contradicted.unspoken")})
	}
	s.opening()
	s.made()
	for i := range of.Evidence.Categories {
		s.category(&of.Evidence.Categories[i])
	}
	for _, c := range of.Said {
		if s.categoryOf(c.Names) == "" {
			s.claim(c, "")
		}
	}
	s.asked()
	s.smells()
	s.alcohol()
	s.guest()
	out := speech.Make(register, s.facts)
	out.Unspoken = append(s.unspoken, out.Unspoken...)
	return out
}

// speaker gathers the facts of a speech in the order in which they are told.
type speaker struct {
	briefing
	register speech.Register
	brief    *Brief
	words    map[food.ID]string

	known     *evidence.Entry // the first figure that is spoken
	questions []string        // that were asked
	facts     []speech.Fact
	unspoken  []speech.Left
}

// tell adds a fact; gaps are names and what fills them.
func (s *speaker) tell(kind, category string, rank int, sources []source.Work, gaps ...string) *speech.Fact {
	f := speech.Fact{Kind: kind, Category: category, Rank: rank, Sources: once(sources), Gaps: map[string]string{}}
	for i := 0; i+1 < len(gaps); i += 2 {
		f.Gaps[gaps[i]] = gaps[i+1]
	}
	s.facts = append(s.facts, f)
	return &s.facts[len(s.facts)-1]
}

// once leaves each work its first place.
func once(works []source.Work) []source.Work {
	var list []source.Work
	for _, w := range works {
		if w.Citation != "" && !slices.ContainsFunc(list, func(x source.Work) bool { return x.Citation == w.Citation && x.URL == w.URL }) {
			list = append(list, w)
		}
	}
	return list
}

// worded are works of which only the text is known.
func worded(texts ...string) []source.Work {
	var list []source.Work
	for _, text := range texts {
		list = append(list, source.Work{Citation: text})
	}
	return list
}

// file is the drink file as a source: what is done nobody but who makes the drink says.
func (s *speaker) file() []source.Work {
	return worded("The drink file " + filepath.Base(s.Assay.Drink.File) + ", by who makes the drink")
}

// the puts an article before a name that has none.
func the(name string) string {
	if strings.HasPrefix(strings.ToLower(name), "the ") {
		return name
	}
	return "the " + name
}

// categoryOf names the category that tells one of some constituents, or a part of one; empty if
// none does.
func (s *speaker) categoryOf(ids []constituent.ID) string {
	for _, id := range ids {
		for up := id; up != ""; up = constituent.Must(up).Parent {
			for _, c := range s.Evidence.Categories {
				if slices.ContainsFunc(c.Entries, func(e evidence.Entry) bool { return e.Constituent.ID == up }) {
					return c.Name
				}
			}
		}
	}
	return ""
}

// entry gives the evidence of a constituent; nil if there is none.
func (s *speaker) entry(id constituent.ID) *evidence.Entry {
	for _, c := range s.Evidence.Categories {
		for i := range c.Entries {
			if c.Entries[i].Constituent.ID == id {
				return &c.Entries[i]
			}
		}
	}
	return nil
}

// works are those behind a figure; none where somebody's memory, or nobody, stands behind a part
// of it that weighs, or it hangs on a reading that contradicts its recipe.
func (s *speaker) works(e *evidence.Entry) []source.Work {
	if e == nil || e.State >= estimate.Trace || e.Remembered() || hangs(s.Sheet, e.Constituent.ID, e.Contributions) {
		return nil
	}
	list := slices.Clone(e.Works)
	for _, c := range e.Contributions {
		id, ok := food.ParseID(c.Food)
		own, found := s.Assay.Drink.OwnFood(id.Code)
		if c.Mean <= 0 || !ok || !found || id.Table != food.Own || c.Table != food.Own {
			continue
		}
		if source.IsFromMemory(own.Source) || own.Source == "" {
			return nil
		}
		list = append(list, source.Work{Citation: own.Source})
	}
	return once(list)
}

// known reports whether what is known of a figure is most of what it could be, or nothing bounds it.
func known(r composition.Result) bool { return !(r.Coverage < half) && !Hollow(r) && !None(r) }

// notBorne says why a claim is not said; empty: it is.
func notBorne(c claims.Said) string {
	if c.SaysNothing() {
		return "it is true of any drink"
	}
	if c.Holds() {
		return ""
	}
	return "its verdict is " + string(c.Word)
}
