package claims

import (
	"fmt"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/note"
	"sipsum/internal/source"
	"sipsum/internal/spelling"
)

// Works finds the work that a value of a table cites.
type Works func(table, sourceID string) (source.Work, bool)

// Link is the input that a claim hangs on most, with the question that it invites.
type Link struct {
	Name   string // in words: "malic acid of pear"
	Input  string // as the run calls it
	Cause  estimate.Cause
	Rests  string  // on what it rests: "7 samples", "± 3 g"
	Share  float64 // of the variance of the margin
	Asked  string  // the likely question
	Answer string
	Cited  string // the work that the answer names; empty: it names none
	Powder string // what could be bought in the place of it, if that is asked: "citric acid"
}

// linkOf puts an input into words.
func (g *Glass) linkOf(in estimate.Entry, share float64, works Works) *Link {
	l := &Link{Name: note.Place(in.Name), Input: in.Name, Cause: in.Cause, Share: share}
	switch in.Cause {
	case estimate.Tables:
		g.ofTable(l, works)
	case estimate.Hand:
		l.byHand(in, g.assay.Drink)
	case estimate.Steps:
		l.Name = stepWords(in.Name)
		l.Asked, l.Answer = "how do you know what that step does?", "by its published factor and its range; read the pot after it to be sure"
	case estimate.Readings:
		l.Asked, l.Answer = "how exact is that instrument?", "as its maker states it; read it twice"
	case estimate.Doubts:
		l.Asked, l.Answer = "which of the two is wrong?", "weigh, and read it again with another instrument"
	default:
		l.Asked, l.Answer = "how sure is the constant "+l.Name+"?", "as it is published"
	}
	return l
}

// ofTable tells whose figure a value of a food is, and by how many samples.
func (g *Glass) ofTable(l *Link, works Works) {
	l.Asked, l.Answer = "how do you know it?", "from its table"
	what, of, ok := strings.Cut(l.Input, " of ")
	if !ok {
		return
	}
	profile := g.profileOf(of)
	if profile == nil {
		return
	}
	f := profile.Food
	l.Name = what + " of " + shortName(f)
	l.Asked = "how do you know the " + what + " of your " + shortName(f) + "?"
	c, ok := constituentNamed(what)
	if !ok {
		return
	}
	cell := profile.Cells[c.Order]
	from := f
	if lender := profile.Lender; lender != nil && cell.From == lender.ID {
		from = lender
	}
	v, stated := from.Value(c.ID)
	switch {
	case stated && v.N == 1:
		l.Rests = "1 sample"
	case stated && v.N > 1:
		l.Rests = fmt.Sprint(v.N) + " samples"
	case cell.By == food.ByKin:
		l.Rests = "nobody measured it: by its kin"
	case from != f:
		l.Rests = "borrowed from " + from.ID.String()
	}
	if own, ok := g.assay.Drink.OwnFood(f.ID.Code); ok && f.ID.Table == food.Own && from == f {
		l.Answer = "by " + own.Source
	}
	var cited []string
	for id := range strings.FieldsSeq(cell.Source) {
		if w, ok := works(cell.From.Works(), id); ok && !source.IsFromMemory(w.Citation) {
			cited = append(cited, w.Citation)
		}
	}
	if len(cited) > 0 {
		l.Answer, l.Cited = cited[0], cited[0]
	}
	if l.Rests != "" {
		l.Answer = l.Rests + ", " + l.Answer
	}
}

// profileOf gives a food of the serving, or one that the last claim ranked; nil if it is neither.
func (g *Glass) profileOf(id string) *food.Profile {
	for _, r := range g.assay.Serving.Rows {
		if r.Profile.Food.ID.String() == id {
			return r.Profile
		}
	}
	for _, p := range g.drawn {
		if p.profile.Food.ID.String() == id {
			return p.profile
		}
	}
	return nil
}

func constituentNamed(name string) (*constituent.Constituent, bool) {
	for _, c := range constituent.All() {
		if c.Name == name {
			return c, true
		}
	}
	return nil, false
}

// shortName is a food's name before its comma, as a bar says it.
func shortName(f *food.Food) string {
	before, _, _ := strings.Cut(f.Name(), ",")
	return clean.LowerFirst(clean.Name(before))
}

// slug is a code for an own food that stands for another.
func slug(f *food.Food) string {
	words := spelling.Words(f.ID.Code)
	if f.ID.Table == food.Own || len(words) == 0 {
		words = spelling.Words(shortName(f))
	}
	return "my-" + strings.Join(words, "-")
}
