package web

import (
	"fmt"
	"net/http"

	"sipsum/internal/clean"
	"sipsum/internal/embedded"
	"sipsum/internal/workshop"
)

func (s *Server) versionRoutes(mux *http.ServeMux) {
	mux.HandleFunc("GET /drink/{name}/versions", s.showVersions)
	mux.HandleFunc("GET /drink/{name}/versions/{id}", s.showVersion)
	mux.HandleFunc("GET /drink/{name}/compare", s.showCompared)
	mux.HandleFunc("POST /drink/{name}/compare", s.showCompared)
}

// versionsPage lists what a drink was before.
type versionsPage struct {
	Head     head
	Versions []versionLine
	Most     int
}

type versionLine struct{ ID, Saved, Size string }

func (s *Server) showVersions(w http.ResponseWriter, r *http.Request) {
	file, ok := s.opened(w, r)
	if !ok {
		return
	}
	list, err := s.folder.Versions(file.Name)
	if err != nil {
		fails(w, err)
		return
	}
	page := versionsPage{Head: headOf(file, "/versions"), Most: embedded.Limit("versions")}
	for _, v := range list {
		page.Versions = append(page.Versions, versionLine{v.ID, v.Saved.Local().Format("2 Jan 2006, 15:04:05"), sizeOf(v.Bytes)})
	}
	show(w, http.StatusOK, "versions", page)
}

// sizeOf writes how long a file is.
func sizeOf(bytes int64) string {
	const kilo = 1000
	if bytes < kilo {
		return fmt.Sprintf("%d B", bytes)
	}
	return fmt.Sprintf("%.1f kB", float64(bytes)/kilo)
}

// headOf is what stands above a page of a drink.
func headOf(file File, here string) head {
	return head{Title: titleOf(file), Below: []string{clean.Name(file.Name)}, Drink: file.Name, Here: here}
}

// versionPage shows a version and how the file differs from it.
type versionPage struct {
	Head   head
	ID     string
	Saved  string
	Text   string
	Base   string // the mark of what is in the folder
	Differ differing
}

func (s *Server) showVersion(w http.ResponseWriter, r *http.Request) {
	now, ok := s.opened(w, r)
	if !ok {
		return
	}
	before, saved, err := s.version(now.Name, r.PathValue("id"))
	if err != nil {
		fails(w, err)
		return
	}
	show(w, http.StatusOK, "version", versionPage{
		Head: headOf(now, "/versions"), ID: r.PathValue("id"), Saved: saved, Text: string(before),
		Base: workshop.Fingerprint(now.Text), Differ: difference(string(before), string(now.Text), [2]string{"Then", "Now"}),
	})
}

// version gives the text of a version, and when it was saved.
func (s *Server) version(name, id string) (text []byte, saved string, err error) {
	list, err := s.folder.Versions(name)
	if err != nil {
		return nil, "", err
	}
	for _, v := range list {
		if v.ID == id {
			text, err = s.folder.Version(name, id)
			return text, moment(v.Saved), err
		}
	}
	return nil, "", notThere("that version is not kept any more", "choose one of the list of versions")
}
