package web

import (
	"context"
	"net/http"

	"sipsum/internal/sheet"
	"sipsum/internal/workshop"
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
	Typed  bool     // it is being worked at: quickly, of its claims the odds alone
	Next   bool     // which reading to take next
	Change bool     // what to change
	Whole  bool     // every figure of every component
	House  bool     // the answers to the house rules in the folder, if there are any
}

// Live reports whether an answer is wanted while somebody types.
func (a Ask) Live() bool { return a.Typed && !a.Next && !a.Change && !a.Whole && !a.House }

// How many draws a drink is calculated with: while somebody works at it, and for what leaves the house.
const (
	liveDraws  = 200
	wholeDraws = 1000
)

// Kitchen calculates drinks. Its errors are those of package fail, with the place of each fault.
type Kitchen interface {
	Sheet(ctx context.Context, file File, ask Ask) (*sheet.Sheet, error)
	Comparer
	Starter
	Sender
	Pantry
	Adviser
}

// Folder is where drink files live.
type Folder interface {
	List() ([]workshop.Entry, error)
	Read(name string) ([]byte, error)
	Beside(path string) ([]byte, error) // a shelf that a drink uses
	Create(name string, text []byte) error
	Archive
	Logger
}

// Server answers requests about the drinks of a folder.
type Server struct {
	kitchen Kitchen
	folder  Folder
	saved   figures
}

// New makes a server of drinks.
func New(kitchen Kitchen, folder Folder) *Server {
	return &Server{kitchen: kitchen, folder: folder}
}

// Handler answers every request of the page, whoever asks; Serving has it behind the door.
func (s *Server) Handler() http.Handler {
	mux := http.NewServeMux()
	assetRoutes(mux)
	s.folderRoutes(mux)
	s.benchRoutes(mux)
	s.saveRoutes(mux)
	s.versionRoutes(mux)
	s.printRoutes(mux)
	s.sendRoutes(mux)
	panelRoutes(s, mux)
	return mux
}
