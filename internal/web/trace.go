package web

import (
	"net/http"
	"strings"

	"sipsum/internal/bench"
)

// tracePage is where a figure comes from.
type tracePage struct {
	Head  head
	Drink string
	*bench.Trace
	Piece bool
	Text  string // as typed, which a page of its own carries along
	Base  string
}

// trace follows a figure of a drink, as it was typed or as it is in the folder.
func (s *Server) trace(w http.ResponseWriter, r *http.Request) {
	file, ok := s.asTyped(w, r)
	if !ok {
		return
	}
	made, err := s.kitchen.Sheet(r.Context(), file, Ask{Draws: liveDraws, Whole: true})
	if err != nil {
		fails(w, err)
		return
	}
	of, err := bench.TraceOf(made, r.FormValue("of"))
	if err != nil {
		fails(w, err)
		return
	}
	p := tracePage{Head: headOf(file, "/trace"), Drink: file.Name, Trace: of, Piece: r.Header.Get(pieceHeader) != ""}
	p.Head.Styles = []string{"bench.css"}
	if p.Piece {
		show(w, http.StatusOK, "trace-piece", p)
		return
	}
	if r.Method == http.MethodPost {
		p.Text, p.Base = string(file.Text), r.PostFormValue("base")
	}
	show(w, http.StatusOK, "trace", p)
}

// Address is where a figure is followed.
func (p tracePage) Address(key string) string {
	return "/drink/" + pathOf(p.Drink) + "/trace?of=" + key
}

// key is the figure of a path of a document, "serving.SUGAR".
func key(path string) string { return strings.TrimPrefix(path, "serving.") }
