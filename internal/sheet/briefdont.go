package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	verdicts "sipsum/internal/claim"
	"sipsum/internal/claims"
	"sipsum/internal/clean"
	"sipsum/internal/constituent"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/ladder"
	"sipsum/internal/ledger"
)

// Kinds of what must not be said.
const (
	DontClaim = "claim" // a claim of the file that fails, or that something unknown decides
	DontName  = "name"  // a pot's name suggests who brings something, and another brings more
	DontMost  = "most"  // who brings most at central values brings half in fewer draws than a claim wants that is likely
)

// DontSay is the most tempting sentence that the numbers do not bear, and why.
type DontSay struct {
	Sentence, Why string
	Short         string // why in the fewest words
	Kind          string
	Constituent   *constituent.Constituent // nil: a claim's
	Food          food.ID                  // whom the sentence credits; zero: a claim's
	Least         float64                  // of DontMost: the least share that it may have; NaN where nothing bounds it
	P             float64                  // the share of the draws in which it holds, of DontMost in which half is brought; NaN where something unknown decides, and of DontName
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
		d := &DontSay{Sentence: strings.TrimSuffix(c.Say, "."), Kind: DontClaim, P: c.P}
		d.Why, d.Short = whyNot(c)
		if c.Word != verdicts.Unknown {
			return d
		}
		if open == nil {
			open = d
		}
	}
	return open
}

// whyNot is the verdict on what is not to be said: in how many draws it holds, or what nobody knows.
func whyNot(c claims.Said) (long, short string) {
	verdict := c.InShort()
	if _, nobody, ok := strings.Cut(verdict, "; "); ok {
		return verdict, nobody
	}
	for _, word := range []string{"fails: ", "unclear: "} {
		verdict = strings.TrimPrefix(verdict, word)
	}
	return "it " + verdict, verdict
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
				best, out = x, &DontSay{Sentence: sentence, Why: x.Instead(), Short: x.Instead(), Kind: DontName, P: math.NaN(), Constituent: x.Constituent, Food: suggested}
			}
		}
	}
	return out
}

// suggested is the ingredient of which the name of a pot makes a guest think, in which whom a sentence
// is about is poured, if it brings some of the constituent and is not whom the sentence is about.
func (s briefing) suggested(x *ladder.Sentence) (of food.ID, word string, ok bool) {
	pot, words := s.Assay.Serving, s.words()
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

// badLead is who brings most of a constituent at central values, if the claim that it brings half is not
// even likely; what something unknown decides only where there is no such.
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
			switch d := s.notMost(c, f.By[0]); {
			case d == nil:
			case !math.IsNaN(d.P):
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

// notMost says that an ingredient brings half of a constituent in too few draws to say so, though it does
// at central values. What is likely to hold is not forbidden.
func (s briefing) notMost(c *constituent.Constituent, i Ingredient) *DontSay {
	const half = 0.5
	if !(i.Share.Mean > half) || i.Worst >= half || !i.Pure && ladder.SaysNothing(i.Word, c) {
		return nil
	}
	read, err := verdicts.Parse(fmt.Sprintf(`share(%s, ingredient "%s") >= 50 %%`, c.ID, i.Food.ID), fail.Place{})
	if err != nil {
		return nil // no claim can be written of it, so nobody is tempted to
	}
	v, err := read.Check(claims.NewGlass(s.Assay, nil))
	if err != nil || v.Holds() {
		return nil
	}
	d := &DontSay{
		Sentence: fmt.Sprintf("%s brings most of the %s", clean.UpperFirst(i.Word), WordsFor(c)),
		Kind:     DontMost, Constituent: c, Food: i.Food.ID, Least: i.Worst, P: v.P,
	}
	if i.Pure {
		d.Sentence = fmt.Sprintf("Most of the %s is added pure", WordsFor(c))
	}
	d.Why, d.Short = whyNot(claims.Said{Verdict: v})
	return d
}
