package web

import (
	"bytes"
	"net/http"

	"sipsum/internal/report/html"
	"sipsum/internal/sheet"
)

// paperSize is the paper of a sheet if nobody says otherwise.
const paperSize = "a4"

// paperPolicy lets a page have its own style and nothing else: a sheet is one file, with its style in it.
const paperPolicy = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"

func (s *Server) printRoutes(mux *http.ServeMux) {
	mux.HandleFunc("GET /drink/{name}/print", s.print)
	mux.HandleFunc("POST /drink/{name}/print", s.print)
}

// print shows the sheet of a drink, as typed or as it is in the folder.
func (s *Server) print(w http.ResponseWriter, r *http.Request) {
	file, ok := s.asTyped(w, r)
	if !ok {
		return
	}
	made, err := s.kitchen.Sheet(r.Context(), file, Ask{Draws: wholeDraws, Claims: true, Next: true, Change: true, House: true})
	if err != nil {
		fails(w, err)
		return
	}
	paper := r.FormValue("paper")
	if paper == "" {
		paper = paperSize
	}
	var out bytes.Buffer
	if err := htmlreport.Sheet(&out, sheet.PaperOf(made), paper); err != nil {
		fails(w, notThere("there is no such paper", "choose a4, a5, a6 or letter"))
		return
	}
	w.Header().Set("Content-Security-Policy", paperPolicy)
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	_, _ = w.Write(out.Bytes()) // somebody who has left needs no words
}
