package web

import (
	"bytes"
	"encoding/json"
	"errors"
	"net/http"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/workshop"
)

// saving is how the address of a save ends.
const saving = "/save"

// pieceHeader is sent by a script that wants a piece of a page.
const pieceHeader = "Sipsum-Piece"

// Archive is where drink files are kept: an error *workshop.Changed says that another hand has been at a file.
type Archive interface {
	Save(name, base string, text []byte) error
	Keep(name string, text []byte) error
	Versions(name string) ([]workshop.Version, error)
	Version(name, id string) ([]byte, error)
}

func (s *Server) saveRoutes(mux *http.ServeMux) {
	mux.HandleFunc("POST /drink/{name}"+saving, s.save)
	mux.HandleFunc("POST /drink/{name}/aside", s.putAside)
	mux.HandleFunc("GET /drink/{name}/mark", s.mark)
}

// save puts what was typed in the place of the file, if that is still the text from which the page began (base, its
// mark). A script is told the new mark; else the drink is shown again. If another hand has been at the file, nothing
// is written, and both texts are shown.
func (s *Server) save(w http.ResponseWriter, r *http.Request) {
	name, text := r.PathValue("name"), typed(r)
	now, err := s.folder.Read(name)
	if err == nil {
		text = endedAs(now, text)
	}
	err = s.folder.Save(name, r.PostFormValue("base"), text)
	var changed *workshop.Changed
	switch {
	case errors.As(err, &changed):
		showConflict(w, File{name, text}, changed)
	case err != nil:
		fails(w, err)
	case r.Header.Get(pieceHeader) != "":
		writeMark(w, text)
	default:
		http.Redirect(w, r, "/drink/"+pathOf(name), http.StatusSeeOther)
	}
}

// putAside keeps what was typed among the versions, and shows the drink as it is in the folder.
func (s *Server) putAside(w http.ResponseWriter, r *http.Request) {
	name := r.PathValue("name")
	if err := s.folder.Keep(name, typed(r)); err != nil {
		fails(w, err)
		return
	}
	http.Redirect(w, r, "/drink/"+pathOf(name)+"/versions", http.StatusSeeOther)
}

// mark tells a script whether the file is still what the page began from.
func (s *Server) mark(w http.ResponseWriter, r *http.Request) {
	text, err := s.folder.Read(r.PathValue("name"))
	if err != nil {
		fails(w, err)
		return
	}
	writeMark(w, text)
}

// writeMark writes the mark of a text: what a page sends as base when it saves.
func writeMark(w http.ResponseWriter, text []byte) {
	w.Header().Set("Content-Type", "application/json")
	_ = json.NewEncoder(w).Encode(struct {
		Base string `json:"base"`
	}{workshop.Fingerprint(text)})
}

// typed gives the text of a form with the line ends of a file: a browser sends those of a letter.
func typed(r *http.Request) []byte {
	return []byte(strings.ReplaceAll(r.PostFormValue("text"), "\r\n", "\n"))
}

// endedAs gives a text the line ends of the file in whose place it comes.
func endedAs(file, text []byte) []byte {
	if !bytes.Contains(file, []byte("\r\n")) {
		return text
	}
	return bytes.ReplaceAll(text, []byte("\n"), []byte("\r\n"))
}

// conflict is the page of a drink that another hand has changed: both texts, and what to do.
type conflict struct {
	Head   head
	Mine   string
	Theirs string
	Base   string // the mark of theirs
	Gone   bool   // there is no file any more
	Differ differing
	Title  string // for another drink
}

func showConflict(w http.ResponseWriter, mine File, changed *workshop.Changed) {
	show(w, http.StatusConflict, "conflict", conflict{
		Head: head{Title: "Changed by another hand", Below: []string{clean.Name(mine.Name)}, Drink: mine.Name, Here: saving},
		Mine: string(mine.Text), Theirs: string(changed.Text), Base: workshop.Fingerprint(changed.Text), Gone: changed.Gone,
		Differ: difference(string(changed.Text), string(mine.Text), [2]string{"In the folder", "Yours"}), Title: titleOf(mine) + " 2",
	})
}
