package web

import (
	"cmp"
	"errors"
	"net/http"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/workshop"
)

// panel is what all panels know: pages that also open beside the bench, as a piece of its page.
type panel struct {
	Head   head
	Drink  string // the drink file that it works on; empty: none
	Piece  bool   // it opens beside a bench, which has the text
	Text   string // of the drink as typed, which a page of its own carries along
	Base   string // what that text began as
	Faults []fail.Fault
}

// foodPanels are those about foods, and drinkPanels those that try what a drink could be.
type (
	foodPanels  struct{ *Server }
	drinkPanels struct{ *Server }
)

// panelRoutes adds the panels, and what is said and handed out.
func panelRoutes(s *Server, mux *http.ServeMux) {
	foods, drinks := foodPanels{s}, drinkPanels{s}
	mux.HandleFunc("GET /foods", foods.find)
	mux.HandleFunc("GET /foods/{food}", foods.show)
	mux.HandleFunc("GET /foods/rank", foods.rank)
	mux.HandleFunc("GET /drink/{name}/fit", drinks.askFit)
	mux.HandleFunc("POST /drink/{name}/fit", drinks.fit)
	mux.HandleFunc("GET /drink/{name}/swap", drinks.askSwap)
	mux.HandleFunc("POST /drink/{name}/swap", drinks.swap)
	mux.HandleFunc("GET /drink/{name}/claim", drinks.askClaim)
	mux.HandleFunc("POST /drink/{name}/claim", drinks.judge)
	handouts{s}.routes(mux)
}

// panelOf begins a panel; drink is the file that it works on, empty if there is none.
func panelOf(r *http.Request, title, drink string) panel {
	here := strings.TrimPrefix(r.URL.Path, "/drink/"+drink)
	return panel{
		Head:  head{Title: clean.Name(title), Drink: drink, Here: here, Styles: []string{"panels.css"}, Modules: []string{"panels.js"}},
		Drink: drink, Piece: r.Header.Get(pieceHeader) != "",
	}
}

// open shows a panel whole, or as the piece of its name.
func (p panel) open(w http.ResponseWriter, name string, data any) {
	status := http.StatusOK
	if len(p.Faults) > 0 {
		status = http.StatusUnprocessableEntity
	}
	if p.Piece {
		name += "-piece"
	}
	show(w, status, name, data)
}

// wrong notes what is wrong, for the panel to show; what is no error for people stays one.
func (p *panel) wrong(err error) error {
	var told *fail.Error
	if err != nil && !errors.As(err, &told) {
		return err
	}
	if told != nil {
		p.Faults = told.Faults
	}
	return nil
}

// worked gives the drink that a request is about: as it was typed, if that was sent along, else as it is saved.
func (s drinkPanels) worked(r *http.Request) (File, error) {
	name := r.PathValue("name")
	if text := typed(r); r.Method == http.MethodPost && len(text) > 0 {
		return File{name, text}, nil
	}
	text, err := s.folder.Read(name)
	return File{name, text}, err
}

// about begins a panel about a drink, as a request has it.
func (s drinkPanels) about(r *http.Request) (panel, File, *drink.Drink, error) {
	file, err := s.worked(r)
	if err != nil {
		return panel{}, file, nil, err
	}
	d, _ := drink.Parse(file.Name, file.Text, s.folder.Beside) // what is wrong with it its calculation says
	p := panelOf(r, cmp.Or(d.Name, file.Name), file.Name)
	p.carries(r, file)
	return p, file, d, nil
}

// carries lets a page of its own carry a text that is not saved.
func (p *panel) carries(r *http.Request, file File) {
	if !p.Piece {
		p.Text, p.Base = string(file.Text), r.PostFormValue("base")
		if len(typed(r)) == 0 { // it is the file's
			p.Base = workshop.Fingerprint(file.Text)
		}
	}
}
