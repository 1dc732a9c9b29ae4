package web

import "net/http"

func (s *Server) folderRoutes(mux *http.ServeMux) {
	mux.HandleFunc("GET /{$}", s.showFolder)
}

// showFolder lists the drinks.
func (s *Server) showFolder(w http.ResponseWriter, _ *http.Request) {
	list, err := s.folder.List()
	if err != nil {
		fails(w, err)
		return
	}
	show(w, http.StatusOK, "folder", struct {
		Head   head
		Drinks []Entry
	}{head{Title: "Drinks"}, list})
}
