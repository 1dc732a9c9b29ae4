package constituent

import (
	"slices"
	"strings"
	"sync"

	"sipsum/internal/embedded"
	"sipsum/internal/fail"
	"sipsum/internal/spelling"
)

// vocable is what a word may mean.
type vocable struct {
	word string // as it is written
	of   []*Constituent
}

// lexicon is the words of one kind, in the order of their files.
type lexicon struct {
	all     []*vocable
	said    map[string]*vocable // by the plain word
	printed map[ID]string       // as a sheet prints it, where that is not its name
}

func (l *lexicon) add(word string, c *Constituent) {
	plain := spelling.Plain(word)
	if plain == "" {
		return
	}
	v, ok := l.said[plain]
	if !ok {
		v = &vocable{word: word}
		l.said[plain] = v
		l.all = append(l.all, v)
	}
	if !slices.Contains(v.of, c) {
		v.of = append(v.of, c)
	}
}

// lexicons are the words for constituents, of kinds that go before each other: tagnames, the names
// of the vocabulary, the words of sheets and kitchens, those of the cards, and names shortened.
var lexicons = sync.OnceValue(func() []*lexicon {
	kinds := make([]*lexicon, 5)
	for i := range kinds {
		kinds[i] = &lexicon{said: map[string]*vocable{}, printed: map[ID]string{}}
	}
	tags, names, words, cards, short := kinds[0], kinds[1], kinds[2], kinds[3], kinds[4]
	for _, c := range All() {
		for _, tag := range append([]string{string(c.ID)}, c.Aliases...) {
			tags.add(tag, c)
		}
		names.add(c.Name, c)
		if acid, ok := strings.CutSuffix(c.Name, " acid"); ok {
			short.add(acid, c)
		}
		if one, many := strings.CutSuffix(c.Name, "s"); many && c.Kind != Rest {
			short.add(one, c)
		}
	}
	for _, row := range embedded.Rows("constituent_words.csv") {
		for id := range strings.FieldsSeq(row.Text("constituents")) {
			words.add(row.Text("word"), Must(ID(id)))
			if row.Text("printed") == "yes" {
				words.printed[ID(id)] = row.Text("word")
			}
		}
	}
	for _, row := range embedded.Rows("card_rows.csv") {
		for _, word := range []string{row.Text("key"), CardWord(row.Text("label"))} {
			cards.add(word, Must(ID(row.Text("tag"))))
		}
	}
	return kinds
})

// CardWord takes off a label of a card what sets it below another: "of which sugars", "– sugars".
func CardWord(label string) string {
	label = strings.TrimLeft(label, "–-+ ")
	if rest, part := strings.CutPrefix(spelling.Plain(label), "of which "); part {
		return rest
	}
	return label
}

// Said gives what a text may mean: none if no constituent is called so, more than one if it can be
// read in several ways. Any case, and a space, a hyphen or a comma between words, say the same.
func Said(text string) []*Constituent {
	if c, ok := Find(strings.TrimSpace(text)); ok {
		return []*Constituent{c}
	}
	plain := spelling.Plain(CardWord(text))
	for _, l := range lexicons() {
		if v, ok := l.said[plain]; ok {
			return v.of
		}
	}
	return nil
}

// Read gives the constituent that a text means among those that are wanted, or says between which it
// leaves the choice, or which there are.
func Read(text string, wanted func(*Constituent) bool) (*Constituent, error) {
	of := Said(text)
	among := slices.DeleteFunc(slices.Clone(of), func(c *Constituent) bool { return !wanted(c) })
	switch {
	case len(among) == 1:
		return among[0], nil
	case len(among) > 1:
		return nil, fail.New(fail.Wrong, `"`+text+`" may be `+fail.Or(each(among, (*Constituent).Named)), `write which: "`+strings.Join(each(among, (*Constituent).Words), `" or "`)+`"`)
	}
	near := slices.DeleteFunc(nearest(text), func(c *Constituent) bool { return !wanted(c) })
	do := "did you mean " + fail.Or(each(near[:min(len(near), mostNear)], (*Constituent).Named)) + "?"
	if len(near) == 0 {
		do = "write words or a tagname, such as " + fail.Or(each([]*Constituent{Must("CITAC"), Must(Caffeine), Must(Sugar)}, (*Constituent).Named))
	}
	if len(of) > 0 {
		return nil, fail.New(fail.Wrong, of[0].Named()+" is printed by tables and is no figure of a drink", do)
	}
	return nil, fail.New(fail.Wrong, `unknown constituent "`+text+`"`, do)
}

// Any wants all constituents.
func Any(*Constituent) bool { return true }

// OfDrinks wants those that a drink has a figure of: all but what tables print besides, energy aside.
func OfDrinks(c *Constituent) bool {
	return c.ID != Mass && (c.Kind != Figure || c.ID == Energy || c.ID == EnergyKcal)
}

// Kept wants those that a step can keep a share of.
func Kept(c *Constituent) bool { return c.Kind != Figure }

// mostNear is how many constituents an error suggests.
const mostNear = 4

// vocables are all words, in the order of their kinds but for tagnames, which come last, and the
// words cut.
var vocables = sync.OnceValues(func() (all []*vocable, names spelling.Names) {
	var words []string
	kinds := lexicons()
	for _, l := range append(kinds[1:len(kinds):len(kinds)], kinds[0]) { // tagnames last
		for _, v := range l.all {
			all, words = append(all, v), append(words, v.word)
		}
	}
	return all, spelling.NamesOf(words)
})

// nearest gives the constituents that somebody may have meant, the nearest first: those whose words
// are near before those whose letters are, and what tables only print besides after all others.
func nearest(text string) []*Constituent {
	all, names := vocables()
	var near []*Constituent
	for _, i := range names.Nearest(text) {
		for _, c := range all[i].of {
			if !slices.Contains(near, c) {
				near = append(near, c)
			}
		}
	}
	slices.SortStableFunc(near, func(a, b *Constituent) int { return besides(a) - besides(b) })
	return near
}

func besides(c *Constituent) int {
	if OfDrinks(c) {
		return 0
	}
	return 1
}

// Words are the words that a sheet prints for a constituent.
func (c *Constituent) Words() string {
	for _, l := range lexicons() {
		if word, ok := l.printed[c.ID]; ok {
			return word
		}
	}
	return c.Name
}

// Named is the words for a constituent with its tagname: "malic acid (MALAC)".
func (c *Constituent) Named() string {
	if words := c.Words(); words != string(c.ID) {
		return words + " (" + string(c.ID) + ")"
	}
	return c.Name
}

func each(list []*Constituent, text func(*Constituent) string) []string {
	out := make([]string, len(list))
	for i, c := range list {
		out[i] = text(c)
	}
	return out
}
