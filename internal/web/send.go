package web

import (
	"context"
	"mime"
	"net/http"
)

// Parcel is one file to send.
type Parcel struct {
	Name string // of the file
	Type string // its media type
	Body []byte
}

// Sender makes of a drink one file that says everything by itself, without a network. Of what it is made is the
// sender's business: this package hands it out as it is.
type Sender interface {
	Parcel(ctx context.Context, file File) (Parcel, error)

	// Proof makes of it one that holds all that its figures were calculated from.
	Proof(ctx context.Context, file File) (Parcel, error)
}

func (s *Server) sendRoutes(mux *http.ServeMux) {
	mux.HandleFunc("GET /drink/{name}/send", s.showSend)
	mux.HandleFunc("GET /drink/{name}/send/everything", s.send(s.kitchen.Parcel))
	mux.HandleFunc("GET /drink/{name}/send/proof", s.send(s.kitchen.Proof))
	mux.HandleFunc("GET /drink/{name}/send/file", s.sendFile)
}

// showSend says what can be sent.
func (s *Server) showSend(w http.ResponseWriter, r *http.Request) {
	file, ok := s.opened(w, r)
	if !ok {
		return
	}
	show(w, http.StatusOK, "send", struct{ Head head }{headOf(file, "/send")})
}

// send hands out what is made of the drink.
func (s *Server) send(made func(context.Context, File) (Parcel, error)) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		file, ok := s.opened(w, r)
		if !ok {
			return
		}
		p, err := made(r.Context(), file)
		if err != nil {
			fails(w, err)
			return
		}
		handOut(w, p)
	}
}

// sendFile hands out the drink file as it is, with the comments at its lines.
func (s *Server) sendFile(w http.ResponseWriter, r *http.Request) {
	if file, ok := s.opened(w, r); ok {
		handOut(w, Parcel{file.Name, "text/plain; charset=utf-8", file.Text})
	}
}

// handOut gives a file to keep: a browser shows nothing of it.
func handOut(w http.ResponseWriter, p Parcel) {
	w.Header().Set("Content-Type", p.Type)
	w.Header().Set("Content-Disposition", mime.FormatMediaType("attachment", map[string]string{"filename": p.Name}))
	_, _ = w.Write(p.Body) // somebody who has left needs no words
}
