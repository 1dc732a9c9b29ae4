package sheet

import (
	"math"

	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/contrast"
	"sipsum/internal/ledger"
	"sipsum/internal/note"
)

// Word is a difference in words. Smaller says that it is less than a judge notices.
type Word struct {
	Text    string
	About   string // "sweet", "sour", or a constituent
	Smaller bool
}

// aloud are the constituents of which a word is said where they surely differ by a twentieth or more
// of the larger, beside sugars and acids.
var aloud = []constituent.ID{constituent.Caffeine, constituent.Alcohol, constituent.Fat, constituent.Energy}

// Words says what of B is surely otherwise than of A and worth a word, as a tongue and a guest would
// ask. What may be the same is never said to differ.
func (c *Compared) Words() []Word {
	list := append(c.sweetWords(), c.sourWords()...)
	for _, id := range aloud {
		f, ok := c.Find(id)
		if !ok || f.Sign() == 0 || !weighty(f.Difference, f.A, f.B) || c.little(f) {
			continue
		}
		amount, interval := by(f.Difference, f.Constituent.Unit)
		list = append(list, Word{Text: amount + moreOrLess(f.Sign()) + WordsFor(f.Constituent) + interval, About: string(id)})
	}
	if l, ok := c.liquid(contrast.Gas); ok && l.Sign() != 0 && weighty(l.Difference, l.A, l.B) {
		amount, interval := by(l.Difference, l.A.Unit)
		list = append(list, Word{Text: amount + moreOrLess(l.Sign()) + "carbon dioxide" + interval, About: string(constituent.CarbonDioxide)})
	}
	return list
}

// weighty reports whether a difference is worth a word: a part of a sum counts from the same share on.
func weighty(d contrast.Difference, a, b composition.Result) bool {
	return math.Abs(d.Mean) >= ledger.Weighty*max(a.Mean, b.Mean)
}

func moreOrLess(sign int) string {
	if sign < 0 {
		return " less "
	}
	return " more "
}

// sweetWords speak of what a mouthful is as sweet as, which a judge tastes, and beside it of the sugars
// of a serving, which are another thing where servings are not of one size, or sugars not of one sweetness.
func (c *Compared) sweetWords() []Word {
	var list []Word
	if mouthful := c.Sweet.Index.Sign(); mouthful != 0 && (c.Sweet.Heard() || math.Abs(c.Sweet.Index.Mean) >= ledger.Weighty*c.sucrose()) {
		amount, interval := by(c.Sweet.Index, "g")
		text := "sweeter by "
		if mouthful < 0 {
			text = "less sweet by "
		}
		list = append(list, withNotice(c.Sweet, "sweet", text+amount+" as sucrose in 100 ml"+interval))
	}
	if f, ok := c.Find(constituent.Sugar); ok && f.Sign() != 0 && weighty(f.Difference, f.A, f.B) {
		amount, interval := by(f.Difference, f.Constituent.Unit)
		list = append(list, Word{Text: "a serving has " + amount + moreOrLess(f.Sign()) + "sugars" + interval, About: string(constituent.Sugar)})
	}
	return list
}

// sucrose is what the sweeter of the two is as sweet as, in g in 100 ml: the difference by its share.
func (c *Compared) sucrose() float64 {
	share := (c.Sweet.ShareLow + c.Sweet.ShareHigh) / 2
	a := c.Sweet.Index.Mean / share // NaN: there was none
	return max(a, a+c.Sweet.Index.Mean)
}

// heard reports whether a taste is worth a word: a judge may notice it, or it is not small.
func heard(n contrast.Noticed, d contrast.Difference, a, b composition.Result) bool {
	return n.Heard() || weighty(d, a, b)
}

// withNotice adds to a word whether a judge notices it. The share moves with the mixture, so that
// what comes to the least of it may be noticed, and surely what is beyond the most.
func withNotice(n contrast.Noticed, about, text string) Word {
	w := Word{Text: text, About: about}
	switch n.Notice {
	case contrast.Surely:
		w.Text += ", which a judge surely notices"
	case contrast.May:
		w.Text += ", which a judge may notice"
	case contrast.Smaller:
		w.Text, w.Smaller = w.Text+", less than a judge notices", true
	}
	return w
}

// sourWords speak of the pH, as far as a meter tells it, and of the titratable acidity.
func (c *Compared) sourWords() []Word {
	var list []Word
	if l, ok := c.liquid(contrast.PH); ok && l.Sign() != 0 && metered(l) {
		amount, interval := by(l.Difference, "")
		text := "pH " + amount + " higher"
		if l.Sign() < 0 {
			text = "pH " + amount + " lower"
		}
		list = append(list, Word{Text: text + interval, About: "ph"})
	}
	if l, ok := c.liquid(contrast.Acidity); ok && l.Sign() != 0 && c.Sour.Index.Sign() == l.Sign() && heard(c.Sour, l.Difference, l.A, l.B) {
		amount, interval := by(l.Difference, "g")
		list = append(list, withNotice(c.Sour, "sour", amount+moreOrLess(l.Sign())+"acid in 100 g"+interval))
	}
	if w, ok := c.acidsWord(); ok {
		list = append(list, w)
	}
	return list
}

// acidsWord speaks of the molecules of acid with a proton to give where they tell another tale than the
// burette: they go the other way, or it finds no weighty difference where they do.
func (c *Compared) acidsWord() (Word, bool) {
	l, ok := c.liquid(contrast.Acids)
	if !ok || l.Sign() == 0 || !weighty(l.Difference, l.A, l.B) {
		return Word{}, false
	}
	base, ok := c.liquid(contrast.Acidity)
	if ok && base.Sign() == l.Sign() && weighty(base.Difference, base.A, base.B) {
		return Word{}, false
	}
	amount, interval := by(l.Difference, "mmol/l")
	return Word{Text: amount + moreOrLess(l.Sign()) + "acid molecules" + interval + ", though not by a burette: the field disputes which a tongue follows", About: string(contrast.Acids)}, true
}

func (c *Compared) liquid(kind contrast.Kind) (contrast.Liquid, bool) {
	for _, l := range c.told() {
		if l.Kind == kind {
			return l, true
		}
	}
	return contrast.Liquid{}, false
}

// Rest says how the figures stand of which no word is said.
func (c *Compared) Rest() string {
	if c.Same() {
		return "Nothing differs: every figure is the same in each draw."
	}
	words, surely := c.Words(), 0
	for _, f := range c.Told().Told {
		if f.Sign() != 0 {
			surely++
		}
	}
	for _, l := range c.told() {
		if l.Sign() != 0 && !hardlyLiquid(l) {
			surely++
		}
	}
	switch {
	case surely == 0 && len(words) == 0:
		return "No figure surely differs: what differs does so by less than its interval."
	case len(words) == 0:
		return "Little differs: what surely does stands in the table, the rest differs by less than its interval."
	case surely > len(words):
		return "What else surely differs stands in the table; the rest differs by less than its interval."
	}
	return "The rest differs by less than its interval."
}

// Servings says that servings are not of one size; empty if they are.
func (c *Compared) Servings() string {
	if same := func(l contrast.Liquid) bool { return l.Sign() == 0 || hardlyLiquid(l) }; same(c.Mass) && same(c.Volume) {
		return ""
	}
	size := func(s *Sheet) string {
		text := note.Number(s.Assay.Mass.Mean) + " g"
		if NoLiquid(s.Assay) == "" {
			text += ", " + note.Number(s.Assay.Volume.Mean) + " ml"
		}
		return text
	}
	return "Servings are not of one size: A " + size(c.A) + ", B " + size(c.B) + ". Figures below are of a whole serving unless they say otherwise."
}
