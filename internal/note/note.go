package note

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

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

// Same reports whether two notes say the same.
func (n Note) Same(other Note) bool { return n.Kind == other.Kind && n.Text == other.Text }

// Number writes a figure for a sentence: three significant digits.
func Number(x float64) string { return fmt.Sprintf("%.3g", unit.Shown(x)) }

// Listed writes foods for a sentence, each once.
func Listed(foods []string) string {
	return strings.Join(slices.Compact(slices.Sorted(slices.Values(foods))), ", ")
}

// Place says in words where in a drink something is, of its path: "cherry syrup, reduce".
func Place(path string) string {
	return strings.NewReplacer("/", ", ", "~s", "/", "~t", "~").Replace(path)
}

// Quote writes a text of the file as it stands there.
func Quote(text string) string { return "\"" + text + "\"" }

// Grams writes a figure for a message: at most four digits, and no exponent.
func Grams(x float64) string {
	const digits = 4
	rounded, _ := strconv.ParseFloat(strconv.FormatFloat(x, 'g', digits, 64), 64)
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}
