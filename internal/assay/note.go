package assay

import (
	"fmt"

	"sipsum/internal/constituent"
	"sipsum/internal/unit"
)

// Note is something the user should know.
type Note struct {
	Kind        string
	Constituent constituent.ID
	Foods       []string
	Text        string
}

// same reports whether two notes say the same.
func (n Note) same(other Note) bool { return n.Kind == other.Kind && n.Text == other.Text }

// number writes a figure for a sentence: three significant digits.
func number(x float64) string { return fmt.Sprintf("%.3g", unit.Shown(x)) }
