package sheet

import (
	"sipsum/internal/composition"
)

// Brief is a drink on one screen: what is in it by sense and who brings it, what may surely be
// said, what to read next, and what a guest must know. What a form has no room for it counts.
type Brief struct {
	Against string   // the coffee that it is set against; empty if there is none
	Also    []string // further ones that compare-with names
	Senses  []Sense
	Read    Read // what disagrees stands on the screen
	Say     []Said
	Dont    *DontSay // nil: nothing tempting is wrong
	Change  *Change  // nil: none was looked for, or none is worth making
	Next    *Next    // nil: nothing that anybody could read would narrow it
	Gap     *Gapping // the unknown that matters most; nil: all is known
	Mind    []string // a glass that overflows, milk that curdles, what is kept too long
	Goes    string   // what the glass does over ten minutes; empty: nothing that is worth a word
	Guest   BriefGuest
}

// Sense is a part of a brief.
type Sense struct {
	Name       string
	Figures    []SenseFigure
	Withheld   []Withheld
	Unmeasured []string // what nobody has measured of any of it, in words
	None       string   // said where there is surely none; empty: there is some, or nobody knows

	gaps []Gapping // what foods do not say of it
}

// SenseFigure is a figure, who brings it, and what the coffee alone has of it.
type SenseFigure struct {
	Key        string // of a document: the constituent's, or ph, brix and so on
	Words      string
	Also       string // the same in another measure: "14.6 % vol"; empty: none
	Leads      bool   // it stands in the first line of its sense
	Form       Form
	Result     composition.Result
	Alone      *composition.Result   // nil: nothing to say
	Further    []*composition.Result // of each of Brief.Also, as Alone
	By         []Ingredient
	FromMemory bool
}

// briefing reads the brief off a sheet.
type briefing struct{ *Sheet }

// BriefOf gathers the one screen of a drink.
func BriefOf(of *Sheet) *Brief {
	s := briefing{of}
	b := &Brief{Read: s.Read()}
	c := s.coffee()
	if c != nil {
		b.Against = c.name
	}
	t := &taster{s, c, s.further(), s.Assay.Serving, &composition.Meter{}, nil}
	for _, k := range t.further {
		b.Also = append(b.Also, k.name)
	}
	b.Senses = []Sense{t.sweet(), t.sour(), t.bitter()}
	if alcohol, ok := t.alcohol(); ok {
		b.Senses = append(b.Senses, alcohol)
	}
	b.Senses = append(b.Senses, t.body(), t.sparkle())
	b.Say = s.say(b.Senses, c)
	b.Dont = s.dontSay(b.Senses)
	b.Change = s.Change
	b.Next = s.next(b.Senses)
	b.Gap = s.gapping(b.Senses)
	b.Mind = s.mind()
	b.Goes = s.goes()
	b.Guest = s.guest()
	return b
}
