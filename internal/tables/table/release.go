package table

import (
	"context"
	"iter"

	"sipsum/internal/food"
	"sipsum/internal/source"
)

// Release is one opened release of a published table: what it is, its columns,
// the works that its values cite, and its foods as a stream.
type Release struct {
	Table   source.Table // Hash is filled
	Columns []food.Column
	Works   []source.Work
	Count   int                          // how many foods will come; 0 if that is not known beforehand
	Foods   iter.Seq2[*food.Food, error] // in the publisher's order; an error ends it; may be ranged over again
}

// Format is a format of published tables that sipsum reads.
type Format struct {
	Name    string // as on the command line, such as "sr"
	Title   string
	Licence string
	Needs   string // what path must be, in words
	// Open opens the release at path. The table gets the given id; empty means
	// the format's name. Faults of the files are *fail.Error with file and line.
	Open func(ctx context.Context, path, id string) (*Release, error)
	// Sniff tells whether path looks like this format, from names of files only.
	Sniff func(path string) bool
}
