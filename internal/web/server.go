package web

import (
	"context"
	"net/http"

	"sipsum/internal/sheet"
)

// File is a drink file as somebody has it open: its name in the folder, and its text as typed.
type File struct {
	Name string
	Text []byte
}

// Ask is what a page wants of a drink.
type Ask struct {
	Draws  int      // of the ensemble
	Rules  []string // label rules; none: the drink's own
	Claims bool     // the verdicts on its claims
	Next   bool     // which reading to take next
	Change bool     // what to change
	Whole  bool     // every figure of every component
}

// Kitchen calculates drinks. Its errors are those of package fail, with the place of each fault.
type Kitchen interface {
	Sheet(ctx context.Context, file File, ask Ask) (*sheet.Sheet, error)
}

// Entry is a drink file of the folder.
type Entry struct {
	Name string // with its ending
}

// Folder is where drink files live.
type Folder interface {
	List() ([]Entry, error)
	Read(name string) ([]byte, error)
}

// Server answers requests about the drinks of a folder.
type Server struct {
	kitchen Kitchen
	folder  Folder
}

// New makes a server of drinks.
func New(kitchen Kitchen, folder Folder) *Server {
	return &Server{kitchen: kitchen, folder: folder}
}

// Handler answers every request of the page.
func (s *Server) Handler() http.Handler {
	mux := http.NewServeMux()
	assetRoutes(mux)
	s.folderRoutes(mux)
	s.benchRoutes(mux)
	return mux
}
