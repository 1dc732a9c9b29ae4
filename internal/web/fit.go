package web

import (
	"math"
	"net/http"
	"slices"
	"strconv"

	"sipsum/internal/clean"
	"sipsum/internal/fail"
	"sipsum/internal/fit"
	"sipsum/internal/sheet"
)

// Wish is a quality of which somebody wants more or less; the zero Wish asks for the targets of the file.
type Wish struct {
	Quality string // of fit.Qualities; empty: none
	More    bool
	By      string // a share in words, "10%"; empty: what a judge notices
}

// readyWish is a wish on a button.
type readyWish struct {
	Words string
	Wish
}

// readyWishes are those that have a button; of these qualities it is published what a judge notices.
var readyWishes = []readyWish{
	{"less sour", Wish{Quality: string(fit.Sour)}},
	{"more sour", Wish{Quality: string(fit.Sour), More: true}},
	{"less sweet", Wish{Quality: string(fit.Sweet)}},
	{"sweeter", Wish{Quality: string(fit.Sweet), More: true}},
	{"sweeter by 10 %", Wish{Quality: string(fit.Sweet), More: true, By: "10%"}},
	{"less bitter by 20 %", Wish{Quality: string(fit.Bitter), By: "20%"}},
}

// fitPanel is the panel of a fit.
type fitPanel struct {
	panel
	Ready     []readyWish
	Qualities []string
	Targets   []string // of the file
	Asked     Wish
	Share     string // of the form, in per cent
	Wished    string // in words; empty: the targets alone
	Line      string
	Why       []string
	Missed    bool
	Moves     []fitMove
	Held      []fitHeld
	Serving   []shift
	Raised    []string
	Remarks   []string
	Decide    []string // what contradicts
	Answered  bool
}

// Moving tells whether there is anything to write.
func (p *fitPanel) Moving() bool {
	return slices.ContainsFunc(p.Moves, func(m fitMove) bool { return m.Line != "" })
}

// fitMove is an amount of the answer.
type fitMove struct {
	Name, End string
	Was, Is   told
	Line      string // the path and the amount, as an edit takes it; empty: it stays
}

// fitHeld is a target at the answer.
type fitHeld struct {
	State, Text, Says string
	Figure            *shift
	Holds             string
	Odds              *odds
}

func (s drinkPanels) askFit(w http.ResponseWriter, r *http.Request) {
	p, _, err := s.fitOf(r)
	if err != nil {
		fails(w, err)
		return
	}
	p.open(w, "fit", p)
}

// fitOf begins the panel.
func (s drinkPanels) fitOf(r *http.Request) (*fitPanel, File, error) {
	about, file, d, err := s.about(r)
	if err != nil {
		return nil, file, err
	}
	p := &fitPanel{panel: about, Ready: readyWishes, Qualities: fit.Qualities()}
	for _, t := range d.Targets {
		p.Targets = append(p.Targets, clean.Prose(t.Check))
	}
	return p, file, nil
}

func (s drinkPanels) fit(w http.ResponseWriter, r *http.Request) {
	p, file, err := s.fitOf(r)
	if err != nil {
		fails(w, err)
		return
	}
	if r.PostFormValue("wish") == "" { // opened beside a bench
		p.open(w, "fit", p)
		return
	}
	fitted := (*sheet.Fitted)(nil)
	if err = p.wish(r); err == nil {
		fitted, err = s.kitchen.Fit(r.Context(), file, p.Asked, liveDraws)
	}
	if err = p.wrong(err); err != nil {
		fails(w, err)
		return
	}
	if fitted != nil {
		p.tell(fitted)
	}
	p.open(w, "fit", p)
}

// wish reads what is asked for: a button, or a quality with its way and its share.
func (p *fitPanel) wish(r *http.Request) error {
	ask := r.PostFormValue("wish")
	for _, x := range readyWishes {
		if x.Words == ask {
			p.Asked, p.Wished = x.Wish, x.Words
			return nil
		}
	}
	p.Share = r.PostFormValue("by")
	if ask != "own" {
		return nil
	}
	p.Asked = Wish{Quality: r.PostFormValue("quality"), More: r.PostFormValue("way") == "more"}
	if !slices.Contains(fit.Qualities(), p.Asked.Quality) {
		return fail.New(fail.Wrong, "there is no quality \""+clean.Name(p.Asked.Quality)+"\"", "use one of: "+fail.Or(fit.Qualities()))
	}
	p.Wished = r.PostFormValue("way") + " " + p.Asked.Quality
	switch {
	case p.Share == "" && fit.Quality(p.Asked.Quality).Noticed():
		return nil
	case p.Share == "":
		return fail.New(fail.Wrong, "how much "+p.Wished+" a judge notices is not published as far as was looked", "say by how much, in per cent")
	}
	by, err := strconv.ParseFloat(p.Share, 64)
	if err != nil || !(by > 0) || math.IsInf(by, 0) || !p.Asked.More && by >= whole {
		return fail.New(fail.Wrong, "it cannot move by \""+clean.Name(p.Share)+"\" per cent", "write a number, such as 10; less of something is less than 100 of it")
	}
	p.Asked.By = strconv.FormatFloat(by, 'f', -1, 64) + "%"
	p.Wished += " by " + strconv.FormatFloat(by, 'f', -1, 64) + " %"
	return nil
}

// tell writes an answer.
func (p *fitPanel) tell(f *sheet.Fitted) {
	p.Answered, p.Missed = true, !f.Met
	p.Line, p.Why, p.Remarks = clean.UpperFirst(clean.Prose(f.Line)), proses(f.Why), proses(f.Remarks)
	p.Decide = sheet.Contradictions(f.Sheet)
	for i, m := range f.Moves {
		p.Moves = append(p.Moves, moveOf(m, "moves."+strconv.Itoa(i)))
	}
	for i, h := range f.Held {
		p.Held = append(p.Held, heldOf(h, "targets."+strconv.Itoa(i)))
	}
	for i, b := range f.Beside {
		path := "serving." + strconv.Itoa(i)
		if x := (shift{clean.Name(b.Words), toldOf(b.Before, path+".before"), toldOf(b.After, path+".after")}); x.Moved() {
			p.Serving = append(p.Serving, x)
		}
	}
	for _, c := range f.Raised {
		p.Raised = append(p.Raised, clean.Prose(c.Text))
	}
}

func moveOf(m sheet.FittedMove, path string) fitMove {
	unit := m.Written.Measure.Name
	x := fitMove{Name: clean.Name(m.Name), Was: told{Text: m.Was(), Unit: unit, Path: path + ".before"}, Is: told{Text: m.Is(), Unit: unit, Path: path + ".after"}}
	if m.Changed() {
		x.Line = m.Path + "=" + m.Is() + " " + unit
	}
	if m.End != "" {
		x.End = "the " + m.End + " it may be"
	}
	return x
}

func heldOf(h sheet.FittedTarget, path string) fitHeld {
	x := fitHeld{State: "met", Text: clean.Prose(h.Text), Says: clean.UpperFirst(clean.Prose(h.Says)), Holds: sheet.Changed(h)}
	switch {
	case h.Goal:
		x.State = "goal"
	case !h.Met:
		x.State = "missed"
	}
	if h.Words != "" {
		x.Figure = &shift{clean.Name(h.Words), toldOf(h.Before, path+".before"), toldOf(h.After, path+".after")}
	}
	if x.Holds == "" && !math.IsNaN(h.Hurt) && !h.Goal {
		o := oddsOf(h.Hurt, h.Help, path+".probability_low", path+".probability_high")
		x.Odds = &o
	}
	return x
}

func proses(list []string) []string {
	out := make([]string, len(list))
	for i, text := range list {
		out[i] = clean.UpperFirst(clean.Prose(text))
	}
	return out
}
