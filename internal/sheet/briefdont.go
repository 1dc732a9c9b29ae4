package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/ladder"
	"sipsum/internal/ledger"
)

// Kinds of what must not be said.
const (
	DontClaim = "claim" // a claim of the file that fails, or that something unknown decides
	DontName  = "name"  // a pot's name suggests who brings something, and another brings more
	DontMost  = "most"  // who leads at central values does not bring most in every draw
)

// DontSay is the most tempting sentence that the numbers do not bear, and why.
type DontSay struct {
	Sentence, Why string
	Short         string // why in the fewest words
	Kind          string
	Constituent   *constituent.Constituent // nil: a claim's
	Food          food.ID                  // whom the sentence credits; zero: a claim's
	Least         float64                  // of DontMost: the least share that it may have; NaN where nothing bounds it
}

// dontSay finds what is most tempting to say and does not hold; nil: nothing is.
func (s briefing) dontSay(senses []Sense) *DontSay {
	for _, find := range []func([]Sense) *DontSay{s.badClaim, s.badName, s.badLead} {
		if d := find(senses); d != nil {
			return d
		}
	}
	return nil
}

// badClaim is a claim of the file that fails, else one that something unknown decides, with its
// verdict.
func (s briefing) badClaim([]Sense) *DontSay {
	var open *DontSay
	for _, c := range s.Said {
		if !c.Decides() {
			continue
		}
		verdict, _, _ := strings.Cut(c.Line(), " · ")
		d := &DontSay{Sentence: strings.TrimSuffix(c.Say, "."), Why: verdict, Short: verdict, Kind: DontClaim}
		if held, fails := strings.CutPrefix(verdict, "fails: "); fails {
			d.Why = "it " + held
			d.Short = d.Why
			return d
		}
		if _, nobody, ok := strings.Cut(verdict, "; "); ok {
			d.Short = nobody
		}
		if open == nil {
			open = d
		}
	}
	return open
}

// badName is a pot whose name suggests an ingredient that brings some of a constituent there, though
// another brings more of it. The sentence of the ladder about that other is the reason.
func (s briefing) badName([]Sense) *DontSay {
	var best *ladder.Sentence
	var out *DontSay
	for i := range s.Evidence.Categories {
		for k := range s.Evidence.Categories[i].Sentences {
			x := &s.Evidence.Categories[i].Sentences[k]
			if x.Component != "" || x.Rung.Height() > ladder.Lead.Height() || best != nil && x.Rung.Height() >= best.Rung.Height() {
				continue
			}
			if suggested, word, ok := s.suggested(x); ok {
				sentence := fmt.Sprintf("%s brings the %s", clean.UpperFirst(word), WordsFor(x.Constituent))
				best, out = x, &DontSay{Sentence: sentence, Why: x.Instead(), Short: x.Instead(), Kind: DontName, Constituent: x.Constituent, Food: suggested}
			}
		}
	}
	return out
}

// suggested is the ingredient of which the name of a pot makes a guest think, in which whom a sentence
// is about is poured, if it brings some of the constituent and is not whom the sentence is about.
func (s briefing) suggested(x *ladder.Sentence) (of food.ID, word string, ok bool) {
	pot, words := s.Assay.Serving, wordsOf(s.Assay.Serving)
	all := pot.Central(x.Constituent.ID)
	for _, name := range x.Pots {
		if ladder.Suggests(name, x.Who) {
			continue // whom one thinks of is whom it is of
		}
		brings := map[food.ID]float64{}
		for row, r := range pot.Rows {
			id := r.Profile.Food.ID
			if id == x.Food || len(r.Path) == 0 || r.Path[0] != name || !ladder.Suggests(name, words[id]) {
				continue
			}
			if brings[id] += pot.Of(row, x.Constituent.ID)[0]; brings[id] >= ledger.Weighty*all && brings[id] > 0 {
				return id, words[id], true
			}
		}
	}
	return food.ID{}, "", false
}

// badLead is who brings most of a constituent at central values, if the interval does not bear it;
// of what nothing bounds only where there is no such.
func (s briefing) badLead(senses []Sense) *DontSay {
	var open *DontSay
	for _, x := range senses {
		all := 0.0
		for _, f := range x.Figures {
			if isAcid(f) {
				all += sourness(f)
			}
		}
		for _, f := range x.Figures {
			if f.Key == string(phosphate) || isAcid(f) && sourness(f) < ledger.Weighty*all {
				continue // nobody is tempted by a salt, or by an acid that hardly counts
			}
			c, ok := constituent.Find(f.Key)
			if !ok || len(f.By) < 2 || len(s.works(c.ID)) == 0 {
				continue
			}
			switch d := notMost(c, f.By[0]); {
			case d == nil:
			case !math.IsNaN(d.Least):
				return d
			case open == nil:
				open = d
			}
		}
	}
	return open
}

// isAcid reports whether a figure is that of one acid.
func isAcid(f SenseFigure) bool {
	c, ok := constituent.Find(f.Key)
	return ok && slices.Contains(constituent.Sums().Leaves(constituent.OrganicAcids), c)
}

// notMost says that an ingredient may bring less than most, though it does at central values.
func notMost(c *constituent.Constituent, i Ingredient) *DontSay {
	if i.Share.Mean < ladder.Most.Least() || i.Worst >= ladder.Most.Least() || math.IsNaN(i.Share.Mean) || !i.Pure && ladder.SaysNothing(i.Word, c) {
		return nil
	}
	d := &DontSay{
		Sentence: fmt.Sprintf("%s brings most of the %s", clean.UpperFirst(i.Word), WordsFor(c)),
		Kind:     DontMost, Constituent: c, Food: i.Food.ID, Least: i.Worst,
		Why: "nothing bounds what others may bring", Short: "nobody knows",
	}
	if i.Pure {
		d.Sentence = fmt.Sprintf("Most of the %s is added pure", WordsFor(c))
	}
	if !math.IsNaN(i.Worst) {
		least := math.Ceil(hundred * i.Worst)
		d.Why, d.Short = fmt.Sprintf("it may be as little as %.0f %%", least), fmt.Sprintf("maybe %.0f %%", least)
	}
	return d
}
