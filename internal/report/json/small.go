package jsonreport

import (
	"io"

	"sipsum/internal/fail"
	"sipsum/internal/source"
)

// Version writes sipsum.version/1.
func Version(w io.Writer, program string) error {
	return write(w, struct {
		Schema  string `json:"schema"`
		Program string `json:"program"`
	}{"sipsum.version/1", program})
}

// New writes sipsum.new/1: the file that was written.
func New(w io.Writer, file string) error {
	return write(w, struct {
		Schema string `json:"schema"`
		File   string `json:"file"`
	}{"sipsum.new/1", file})
}

// Serving writes sipsum.serve/1: an address of the page, each time that there is one.
func Serving(w io.Writer, address string) error {
	return write(w, struct {
		Schema  string `json:"schema"`
		Address string `json:"address"`
	}{"sipsum.serve/1", address})
}

// StepGroup is what a kitchen does, and the steps that do it.
type StepGroup struct {
	What  string `json:"what"`
	Steps []Step `json:"steps"`
}

// Step is a step of the grammar: its word, what it does, a line to paste, other words for it.
type Step struct {
	Word    string   `json:"word"`
	Does    string   `json:"does"`
	Example string   `json:"example"`
	Also    []string `json:"also,omitempty"` // what else a kitchen calls it
}

// Steps writes sipsum.steps/1.
func Steps(w io.Writer, groups []StepGroup) error {
	return write(w, struct {
		Schema string      `json:"schema"`
		Groups []StepGroup `json:"groups"`
	}{"sipsum.steps/1", groups})
}

type faultDocument struct {
	File string `json:"file,omitempty"`
	Line int    `json:"line,omitempty"`
	Col  int    `json:"col,omitempty"`
	What string `json:"what"`
	Do   string `json:"do,omitempty"`
}

type errorDocument struct {
	Schema string          `json:"schema"`
	File   string          `json:"file,omitempty"` // of a drink among many
	Errors []faultDocument `json:"errors"`
	Exit   fail.Code       `json:"exit"`
}

// Error writes sipsum.error/1.
func Error(w io.Writer, e *fail.Error) error { return write(w, errorOf(e, "")) }

// ErrorLine writes sipsum.error/1 in the place of one drink among many: on a line, with the file that was asked for.
func ErrorLine(w io.Writer, e *fail.Error, file string) error { return writeLine(w, errorOf(e, file)) }

func errorOf(e *fail.Error, file string) errorDocument {
	document := errorDocument{"sipsum.error/1", file, []faultDocument{}, e.Exit}
	for _, f := range e.Faults {
		document.Errors = append(document.Errors, faultDocument{f.File, f.Line, f.Col, f.What, f.Do})
	}
	return document
}

// Table is a loaded table with its counts.
type Table struct {
	source.Table
	Foods    int
	Values   int
	LoadedAt string // RFC 3339
}

type tableDocument struct {
	ID        string `json:"id"`
	Format    string `json:"format"`
	Title     string `json:"title"`
	Edition   string `json:"edition"`
	Publisher string `json:"publisher"`
	Licence   string `json:"licence"`
	Citation  string `json:"citation"`
	Hash      string `json:"hash"`
	Foods     int    `json:"foods"`
	Values    int    `json:"values"`
	LoadedAt  string `json:"loaded_at"`
}

// Tables writes sipsum.tables/1.
func Tables(w io.Writer, list []Table) error {
	document := struct {
		Schema string          `json:"schema"`
		Tables []tableDocument `json:"tables"`
	}{"sipsum.tables/1", []tableDocument{}}
	for _, t := range list {
		document.Tables = append(document.Tables, tableDocument{
			t.ID, t.Format, t.Title, t.Edition, t.Publisher, t.Licence, t.Citation, t.Hash, t.Foods, t.Values, t.LoadedAt,
		})
	}
	return write(w, document)
}

// Loaded writes sipsum.load/1: what a load did.
func Loaded(w io.Writer, id, edition string, foods, values int, already bool) error {
	return write(w, struct {
		Schema  string `json:"schema"`
		ID      string `json:"id"`
		Edition string `json:"edition"`
		Foods   int    `json:"foods"`
		Values  int    `json:"values"`
		Already bool   `json:"already_loaded"`
	}{"sipsum.load/1", id, edition, foods, values, already})
}

// Removed writes sipsum.remove/1.
func Removed(w io.Writer, id string) error {
	return write(w, struct {
		Schema string `json:"schema"`
		ID     string `json:"id"`
	}{"sipsum.remove/1", id})
}

// Format is a format of published tables.
type Format struct {
	Name    string `json:"name"`
	Title   string `json:"title"`
	Licence string `json:"licence"`
	Needs   string `json:"needs"`
}

// Formats writes sipsum.formats/1.
func Formats(w io.Writer, list []Format) error {
	return write(w, struct {
		Schema  string   `json:"schema"`
		Formats []Format `json:"formats"`
	}{"sipsum.formats/1", list})
}
