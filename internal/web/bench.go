package web

import (
	"context"
	"errors"
	"net/http"

	"sipsum/internal/fail"
	"sipsum/internal/sheet"
)

func (s *Server) benchRoutes(mux *http.ServeMux) {
	mux.HandleFunc("GET /drink/{name}", s.openBench)
	mux.HandleFunc("POST /drink/{name}", s.tryBench)
}

// bench is the page of a drink.
type bench struct {
	Head   head
	Name   string
	Text   string
	Brief  *sheet.Brief // nil: there are faults
	Faults []fail.Fault
}

func (s *Server) openBench(w http.ResponseWriter, r *http.Request) {
	name := r.PathValue("name")
	text, err := s.folder.Read(name)
	if err != nil {
		fails(w, err)
		return
	}
	show(w, http.StatusOK, "bench", s.benchOf(r.Context(), File{Name: name, Text: text}))
}

func (s *Server) tryBench(w http.ResponseWriter, r *http.Request) {
	file := File{Name: r.PathValue("name"), Text: []byte(r.PostFormValue("text"))}
	show(w, http.StatusOK, "bench", s.benchOf(r.Context(), file))
}

// benchOf calculates a drink for its page.
func (s *Server) benchOf(ctx context.Context, file File) bench {
	b := bench{Head: head{Title: file.Name, Drink: file.Name}, Name: file.Name, Text: string(file.Text)}
	made, err := s.kitchen.Sheet(ctx, file, Ask{Draws: liveDraws, Claims: true})
	if err == nil {
		b.Brief = sheet.BriefOf(made)
		return b
	}
	var told *fail.Error
	if errors.As(err, &told) {
		b.Faults = told.Faults
	}
	return b
}
