package web

import "net/http"

func (s *Server) folderRoutes(mux *http.ServeMux) {
	mux.HandleFunc("GET /{$}", s.showFolder)
}

// showFolder lists the drinks.
func (s *Server) showFolder(w http.ResponseWriter, _ *http.Request) {
	list, err := s.folder.List()
	if err != nil {
		http.Error(w, err.Error(), http.StatusInternalServerError)
		return
	}
	show(w, http.StatusOK, "folder", list)
}
