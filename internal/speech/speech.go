package speech

import (
	"cmp"
	"slices"

	"sipsum/internal/source"
)

// Fact is what one sentence may tell.
type Fact struct {
	Kind     string            // of data/speech.csv
	Category string            // the sensory category; empty: of the whole drink
	Gaps     map[string]string // what fills the sentence
	General  map[string]string // of safety: words for gaps that cannot be spoken
	Range    *Range            // fills {amount}
	Sources  []source.Work
	Rank     int  // among those of its kind: the later are left out first
	After    bool // it speaks of the fact before it, and is not told without it
}

// Line is a sentence of a speech.
type Line struct {
	Kind     string
	Category string
	Text     string
	Words    int
	Figure   *Told  // nil: it has none
	Of       *Range // behind Figure
	Sources  []source.Work

	worth  float64
	safety bool
	rank   int
	after  int // the line that it follows; -1: none
}

// Left is a sentence that is not spoken, and why.
type Left struct{ Kind, Text, Why string }

// Speech is what is said in one register.
type Speech struct {
	Register Register
	Lines    []Line
	LeftOut  []Left // for time, in the order in which they would stand
	Unspoken []Left // that cannot be said as they stand, or are not borne
	Words    int
	Slow     float64 // seconds at the slow end of the rates
	Fast     float64 // and at the fast end
}

// ForTime is why a sentence is left out that fits no more.
const ForTime = "for time"

// Kinds of what has to be told for safety.
const (
	Caution = "caution"
	More    = "more"
)

// Make makes a speech of facts, in their order, and leaves out what does not fit.
func Make(register Register, facts []Fact) Speech {
	s := Speech{Register: register}
	before := -1 // the line of the fact before
	for _, f := range facts {
		follows := before
		before = -1
		row, ok := sentences()[place{register, f.Kind}]
		if !ok {
			continue
		}
		line, why := f.line(row)
		if why != "" && row.safety {
			line, why = Fact{Kind: f.Kind, Category: f.Category, Gaps: f.General, Sources: f.Sources}.line(row)
		}
		if f.After && follows < 0 {
			continue
		}
		if why != "" {
			s.Unspoken = append(s.Unspoken, Left{f.Kind, line.Text, why})
			continue
		}
		if line.after = -1; f.After {
			line.after = follows
		}
		before = len(s.Lines)
		s.Lines = append(s.Lines, line)
	}
	s.fit()
	return s
}

// line writes the sentence of a fact; why is not empty if it is not to be spoken.
func (f Fact) line(row sentence) (l Line, why string) {
	l = Line{Kind: f.Kind, Category: f.Category, Sources: f.Sources, worth: row.worth, safety: row.safety, rank: f.Rank}
	gaps := map[string]string{}
	for g, text := range f.Gaps {
		if text != "" {
			gaps[g] = text
		}
	}
	if f.Rank > 0 {
		l.worth = row.later
	}
	if f.Range != nil {
		told, ok := f.Range.tell()
		if !ok {
			return l, "its figure is open"
		}
		l.Figure, l.Of, gaps["amount"] = &told, f.Range, told.Words
	}
	l.Text = aloud(filled(row.template, gaps))
	l.Words = Words(l.Text)
	// guard: only plain words are spoken
	if bad := unspeakable(l.Text); bad != "" {
		return l, bad
	}
	return l, ""
}

// fit leaves out what is worth least until a slow speaker is done in time, and takes back what there
// is room for. Of what is of safety only cautions go, and a word that there are more comes in their
// place.
func (s *Speech) fit() {
	gone, cautions := make([]bool, len(s.Lines)), false // cautions: some have gone, and nothing says that there is more
	asks := slices.ContainsFunc(s.Lines, func(l Line) bool { return l.Kind == More })
	for s.timed(gone, cautions); s.Slow > Limits().Time.Value; s.timed(gone, cautions) {
		worst := s.worst(gone)
		if worst < 0 {
			break
		}
		gone[worst] = true
		cautions = cautions || s.Lines[worst].Kind == Caution && !asks
	}
	s.takeBack(gone, cautions)
	var kept []Line
	for i, l := range s.Lines {
		if gone[i] {
			s.LeftOut = append(s.LeftOut, Left{l.Kind, l.Text, ForTime})
		} else {
			kept = append(kept, l)
		}
	}
	if cautions {
		kept = append(kept, s.more())
	}
	s.Lines = kept
}

// worst is the line that goes next; -1 if none may.
func (s *Speech) worst(gone []bool) int {
	worst := -1
	for i, l := range s.Lines {
		switch {
		case gone[i]:
		case l.after >= 0 && gone[l.after]: // what it follows has gone
			return i
		case !l.safety && (worst < 0 || l.before(s.Lines[worst])):
			worst = i
		}
	}
	return worst
}

// takeBack takes lines back that still fit, the dearest first. Cautions go in their order.
func (s *Speech) takeBack(gone []bool, cautions bool) {
	var out []int
	for i, l := range s.Lines {
		if gone[i] && l.Kind != Caution {
			out = append(out, i)
		}
	}
	slices.SortStableFunc(out, func(i, j int) int {
		a, b := s.Lines[i], s.Lines[j]
		return cmp.Or(cmp.Compare(b.worth, a.worth), cmp.Compare(a.rank, b.rank))
	})
	for _, i := range out {
		if after := s.Lines[i].after; after >= 0 && gone[after] {
			continue
		}
		gone[i] = false
		if s.timed(gone, cautions); s.Slow > Limits().Time.Value {
			gone[i] = true
		}
	}
	s.timed(gone, cautions)
}

// timed counts the words of what is not gone, and their seconds.
func (s *Speech) timed(gone []bool, more bool) {
	s.Words = 0
	for i, l := range s.Lines {
		if !gone[i] {
			s.Words += l.Words
		}
	}
	if more {
		s.Words += s.more().Words
	}
	p := Limits()
	s.Slow, s.Fast = Seconds(s.Words, p.Slow.Value), Seconds(s.Words, p.Fast.Value)
}

// more says that there is more to ask; the sources are those of the cautions that were left out.
func (s *Speech) more() Line {
	f := Fact{Kind: More}
	for _, l := range s.Lines {
		if l.Kind == Caution {
			f.Sources = append(f.Sources, l.Sources...)
		}
	}
	line, _ := f.line(sentences()[place{s.Register, More}])
	return line
}

// before reports whether a line is left out before another that stands earlier in the speech.
func (l Line) before(other Line) bool {
	if l.worth != other.worth {
		return l.worth < other.worth
	}
	return l.rank >= other.rank
}
