package web

import (
	"context"
	"net/http"
	"net/url"
	"strings"
	"time"

	"sipsum/internal/clean"
	"sipsum/internal/fail"
	"sipsum/internal/workshop"
)

// Demo is a drink that sipsum brings along.
type Demo struct{ From, Title string }

// Starter gives the texts that drinks begin from.
type Starter interface {
	Demos() []Demo
	// Start gives the name of the file and the text of a new drink: a copy of text, or what From of a demo
	// says, or if both are empty what teaches how a drink is written.
	Start(ctx context.Context, name, from string, text []byte) (File, error)
}

func (s *Server) folderRoutes(mux *http.ServeMux) {
	mux.HandleFunc("GET /{$}", s.showFolder)
	mux.HandleFunc("POST /new", s.begin)
	mux.HandleFunc("GET /", func(w http.ResponseWriter, _ *http.Request) { fails(w, errNoPage) })
}

var errNoPage = notThere("there is no such page", "go to the drinks")

// folderPage is the first page.
type folderPage struct {
	Head   head
	Drinks []drinkLink
	Demos  []Demo
}

// drinkLink is a drink of the folder.
type drinkLink struct {
	Path  string // behind /drink/
	Title string
	File  string
	Saved string
}

// showFolder lists the drinks, and what a new one may begin from.
func (s *Server) showFolder(w http.ResponseWriter, _ *http.Request) {
	list, err := s.folder.List()
	if err != nil {
		fails(w, err)
		return
	}
	page := folderPage{Head: head{Title: "Drinks", Here: "/"}, Demos: s.kitchen.Demos()}
	for _, e := range list {
		title := e.Title
		if title == "" {
			title = clean.Name(e.Name)
		}
		page.Drinks = append(page.Drinks, drinkLink{pathOf(e.Name), title, clean.Name(e.Name), moment(e.Saved)})
	}
	show(w, http.StatusOK, "folder", page)
}

// begin writes a new drink and opens it.
func (s *Server) begin(w http.ResponseWriter, r *http.Request) {
	name := strings.TrimSpace(r.PostFormValue("name"))
	if name == "" {
		fails(w, fail.New(fail.Wrong, "the drink has no name", "go back and give it one"))
		return
	}
	file, err := s.kitchen.Start(r.Context(), name, r.PostFormValue("from"), typed(r))
	if err == nil {
		err = s.folder.Create(file.Name, file.Text)
	}
	if err != nil {
		fails(w, err)
		return
	}
	http.Redirect(w, r, "/drink/"+pathOf(file.Name), http.StatusSeeOther)
}

// pathOf writes the name of a file as a part of an address.
func pathOf(name string) string { return url.PathEscape(name) }

// moment writes when something was.
func moment(at time.Time) string { return at.Local().Format("2 Jan 2006, 15:04") }

// opened reads a drink file that a request names; if it cannot it has answered.
func (s *Server) opened(w http.ResponseWriter, r *http.Request) (File, bool) {
	name := r.PathValue("name")
	text, err := s.folder.Read(name)
	if err != nil {
		fails(w, err)
		return File{}, false
	}
	return File{name, text}, true
}

// asTyped gives a drink as it was sent, or else as it is in the folder.
func (s *Server) asTyped(w http.ResponseWriter, r *http.Request) (File, bool) {
	if r.Method == http.MethodPost {
		return File{r.PathValue("name"), typed(r)}, true
	}
	return s.opened(w, r)
}

// titleOf names a drink for a page that does not calculate it.
func titleOf(f File) string {
	if title := workshop.Title(f.Text); title != "" {
		return title
	}
	return clean.Name(f.Name)
}
