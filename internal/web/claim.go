package web

import (
	"cmp"
	"math"
	"net/http"
	"strings"

	"sipsum/internal/claim"
	"sipsum/internal/claims"
	"sipsum/internal/clean"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
)

// claimPanel is the panel of a claim that somebody tries.
type claimPanel struct {
	panel
	Say, Check string
	Examples   []string
	Marks      []mark
	Said       *saidClaim
}

// mark is a fault of the expression, below the column that it is at.
type mark struct {
	Before, At, After string // the expression as far as the fault, the sign there, the rest
	What, Do          string
}

// saidClaim is the verdict.
type saidClaim struct {
	Word, Line string // in a word; the rest of its line, where the word and the odds do not say all
	Odds       odds
	Lines      []string
}

// inCheck is what places of the expression name in the place of a file.
const inCheck = "check"

// claimExamples are expressions that stand in the empty panel: one for each kind of question.
var claimExamples = []string{"serving(SUGAR) < 8 g", "serving(CAFFN) between 60 mg and 120 mg", "ph() < 4.2", "ratio(CITAC, MALAC) > 1", "not contains(milk)"}

func (s drinkPanels) askClaim(w http.ResponseWriter, r *http.Request) {
	p, _, err := s.claimOf(r)
	if err != nil {
		fails(w, err)
		return
	}
	p.open(w, "claim", p)
}

// claimOf begins the panel.
func (s drinkPanels) claimOf(r *http.Request) (*claimPanel, File, error) {
	about, file, _, err := s.about(r)
	if err != nil {
		return nil, file, err
	}
	return &claimPanel{panel: about, Say: r.FormValue("say"), Check: strings.TrimSpace(r.FormValue("check")), Examples: claimExamples}, file, nil
}

func (s drinkPanels) judge(w http.ResponseWriter, r *http.Request) {
	p, file, err := s.claimOf(r)
	if err != nil {
		fails(w, err)
		return
	}
	if p.Check == "" {
		p.open(w, "claim", p)
		return
	}
	at := fail.Place{File: inCheck, Line: 1, Col: 1}
	said, err := []claims.Said(nil), p.mark(at)
	if err == nil {
		said, err = s.kitchen.Weigh(r.Context(), file, drink.Claim{Place: at, Say: cmp.Or(p.Say, p.Check), Check: p.Check, CheckAt: at}, liveDraws)
	}
	if err = p.wrong(err); err != nil {
		fails(w, err)
		return
	}
	p.pointAt()
	if len(said) == 1 {
		p.tell(said[0])
	}
	p.open(w, "claim", p)
}

// mark says what is wrong with the expression by itself, before any drink is calculated.
func (p *claimPanel) mark(at fail.Place) error {
	_, err := claim.Parse(p.Check, at)
	return err
}

// pointAt puts the faults of the expression below it; those of the file stay.
func (p *claimPanel) pointAt() {
	var rest []fail.Fault
	for _, f := range p.Faults {
		if f.File != inCheck || f.Line != 1 {
			rest = append(rest, f)
			continue
		}
		runes := []rune(p.Check)
		col := min(max(f.Col-1, 0), len(runes))
		m := mark{Before: string(runes[:col]), What: clean.Prose(f.What), Do: clean.Prose(f.Do)}
		if col < len(runes) {
			m.At, m.After = string(runes[col]), string(runes[col+1:])
		}
		p.Marks = append(p.Marks, m)
	}
	p.Faults = rest
}

func (p *claimPanel) tell(c claims.Said) {
	low, high := "claims.0.probability", "claims.0.probability"
	hurt, help := c.P, c.P
	if math.IsNaN(c.P) { // the unknown decides
		hurt, help, low, high = c.Hurt, c.Help, "claims.0.probability_low", "claims.0.probability_high"
	}
	line := c.Line()
	switch {
	case c.Outcome.Logic != claim.Open: // why it says nothing of this drink
	case c.Word == claim.Unknown:
		line = "nobody knows " + c.UnknownWords()
	default:
		line = strings.TrimPrefix(strings.TrimPrefix(line, c.InShort()), " · ")
	}
	p.Said = &saidClaim{Word: c.Says(), Line: clean.UpperFirst(clean.Prose(line)), Odds: oddsOf(hurt, help, low, high), Lines: proses(c.Lines())}
}
