package sheet

import (
	"cmp"
	"slices"
	"strings"

	"sipsum/internal/allergen"
	"sipsum/internal/clean"
	"sipsum/internal/food"
	"sipsum/internal/ladder"
	"sipsum/internal/source"
	"sipsum/internal/speech"
)

// mostChecked is how many words of what is to be checked anybody listens to (our own bound): what
// is longer is told in general words, and stands on the page of allergens.
const mostChecked = 25

// guest tells what has to be told of allergens and of what may hurt. A judge drinks too: of
// cautions there is what may kill.
func (s *speaker) guest() {
	g := &s.brief.Guest
	var on []string
	for _, t := range g.OnTop {
		if !t.Eaten {
			on = append(on, clean.LowerFirst(ladder.Head(t.Name)))
		}
	}
	if len(on) > 0 {
		s.tell("on top", "", 0, s.file(), "garnish", clean.Listed(on))
	}
	s.allergens("contains", g.Contains, func(d *Declaration) []allergen.Entry { return d.Contains })
	s.allergens("may contain", g.MayContain, func(d *Declaration) []allergen.Entry { return d.MayContain })
	if what := s.toCheck(); len(what) > 0 {
		const general = "some of what is in it"
		text := clean.Listed(what)
		if speech.Words(text) > mostChecked {
			text = general
		}
		s.tell("check", "", 0, s.file(), "what", text).General = map[string]string{"what": general}
	}
	var told []string
	asks := false
	for i, c := range g.Cautions {
		advice, written := cardWords()["advice."+c.Code]
		kitchen := written && advice == "" // a guest has nothing to do with it
		if c.Words == "" || kitchen || slices.Contains(told, c.Words) || s.register == speech.Judge && c.Rank != deadly {
			continue
		}
		told = append(told, c.Words)
		if source.IsFromMemory(c.Source) { // it is no evidence, and may hurt all the same
			asks = true
			continue
		}
		s.tell(speech.Caution, "", i, worded(c.Source), "caution", clean.Prose(c.Words))
	}
	if asks {
		s.tell(speech.More, "", 0, s.file())
	}
}

// toCheck is what somebody has to look at first, as it is spoken of.
func (s *speaker) toCheck() []string {
	var list []string
	all := s.Allergens()
	for i := range all {
		for _, c := range all[i].Check {
			var foods []string
			for _, code := range c.Foods {
				if id, ok := food.ParseID(code); ok {
					foods = append(foods, cmp.Or(s.wordOf(id), "a food"))
				}
			}
			text := clean.Listed(foods)
			if c.Leaf != "" {
				text = "whether " + cmp.Or(text, "it") + " holds " + lowered(clean.Name(cmp.Or(c.Name, c.Leaf)))
			}
			if text = cmp.Or(text, "some of what is in it"); !slices.Contains(list, text) {
				list = append(list, text)
			}
		}
	}
	return list
}

// lowered writes names parted by commas as they stand within a sentence: "eggs and milk".
func lowered(names string) string {
	list := strings.Split(names, ", ")
	for i := range list {
		list[i] = clean.LowerFirst(list[i])
	}
	return clean.Listed(list)
}

// allergens tells those that are declared under any of the rules.
func (s *speaker) allergens(kind string, names []string, of func(*Declaration) []allergen.Entry) {
	if len(names) == 0 {
		return
	}
	var sources, lower []string
	all := s.Allergens()
	for i := range all {
		for _, e := range of(&all[i]) {
			sources = append(sources, e.Source)
		}
	}
	for _, n := range names {
		lower = append(lower, clean.LowerFirst(clean.Name(n)))
	}
	works := append(worded(sources...), s.file()...)
	s.tell(kind, "", 0, works, "allergens", clean.Listed(lower)).General = map[string]string{"allergens": "allergens: ask for the list"}
}
