package web

import (
	"fmt"
	"net/http"

	"sipsum/internal/clean"
	"sipsum/internal/sheet"
	"sipsum/internal/speech"
)

// servedDraws is how many draws a drink is calculated with for what is said, handed out or printed.
const servedDraws = 1000

// handouts are what is said and given to somebody: the stage, the guest's card, the allergens.
type handouts struct{ *Server }

func (s handouts) routes(mux *http.ServeMux) {
	mux.HandleFunc("GET /drink/{name}/stage", s.stage)
	mux.HandleFunc("GET /drink/{name}/guest", s.guest)
	mux.HandleFunc("GET /drink/{name}/allergens", s.allergens)
}

// stage is the view for who presents a drink: what may be said, large, and nothing else.
type stage struct {
	Head      head
	Drink     string
	To        speech.Register
	Registers []register
	Decide    []string // what contradicts: of that nothing is said
	Parts     []string // of the speech, one for each category
	Fast      string
	Slow      string
	Words     int
	Guest     []sheet.Block // what a guest must not miss
	Advice    []string      // and what to mind, in a guest's words
}

// register is for whom a speech is.
type register struct {
	To    speech.Register
	Words string
	Here  bool
}

// registerWords are the registers as somebody chooses them.
var registerWords = map[speech.Register]string{speech.Judge: "To the judges", speech.Guest: "To a guest"}

func (s handouts) stage(w http.ResponseWriter, r *http.Request) {
	file, ok := s.opened(w, r)
	if !ok {
		return
	}
	of, err := s.kitchen.Sheet(r.Context(), file, Ask{Draws: servedDraws, Claims: true})
	if err != nil {
		fails(w, err)
		return
	}
	to := speech.Judge
	if r.FormValue("to") == string(speech.Guest) {
		to = speech.Guest
	}
	p := stage{
		Head:  head{Title: clean.Name(of.Assay.Drink.Name), Drink: file.Name, Here: "/stage", Styles: []string{"stage.css"}, Modules: []string{"stage.js"}},
		Drink: file.Name, To: to, Decide: sheet.Contradictions(of),
	}
	for _, x := range speech.Registers {
		p.Registers = append(p.Registers, register{x, registerWords[x], x == to})
	}
	p.say(sheet.SpeechOf(of, to))
	p.Advice = of.Served().Advice
	for _, b := range of.StageLeaf().Blocks {
		if b.Role == sheet.Boxed {
			p.Guest = append(p.Guest, b)
		}
	}
	show(w, http.StatusOK, "stage", p)
}

// say puts a speech into paragraphs, one for each category.
func (p *stage) say(of speech.Speech) {
	p.Words, p.Fast, p.Slow = of.Words, fmt.Sprintf("%.0f", of.Fast), fmt.Sprintf("%.0f", of.Slow)
	for i, l := range of.Lines {
		text := clean.Prose(l.Text)
		if i == 0 || of.Lines[i-1].Category != l.Category {
			p.Parts = append(p.Parts, text)
			continue
		}
		p.Parts[len(p.Parts)-1] += " " + text
	}
}
