package sheet

// Leaf is a page that is handed out or hung up: a card, the allergens, a menu. What stands
// on it, in which order and in which words is said here; a renderer gives it its form and
// escapes what its form reads as signs. Texts of strangers are clean (package clean).
type Leaf struct {
	Kind     string // "card", "guest", "stage", "allergens", "menu", "batch", "home" or "tasting"
	Language string
	Label    string // the kind in words
	Title    string
	Below    []string // pieces of the line below the title
	Blocks   []Block
	Foot     []string
}

// Block is a part of a leaf: a heading, and below it figures, a table, lines.
type Block struct {
	Heading string
	Role    Role
	Figures []Figured
	Lines   []Line
	Grid    *Grid
	Picture Picture // of a sheet on paper; nil: none
}

// Role is what a block does on its leaf.
type Role string

// The roles beside that of plain lines.
const (
	InLine Role = "inline" // lines that stand beside each other, as one list
	Boxed  Role = "boxed"  // the box with a border of ink: what a guest must not miss
	Spoken Role = "spoken" // sentences for the stage
	Small  Role = "small"
	Aside  Role = "aside" // for who makes the page: not printed
	Tabled Role = "table" // a table, and what belongs to it below
	Ticked Role = "tick"  // what is done and ticked off: its lines have boxes of their own
	Quoted Role = "say"   // what may be said or may not, and below it how surely and why
	Built  Role = "build" // what is poured: its lines lead with the amount
	Wrong  Role = "wrong" // what must not be missed: it contradicts, or will not work
	Cited  Role = "cited" // sources by their numbers
	Softly Role = "told"  // sentences, and behind them in small type what belongs to them
)

// Figured is a figure that is printed large.
type Figured struct{ Label, Text string }

// Line is a sentence: its lead, what is emphasised in it, the rest, and who says so.
type Line struct{ Lead, Strong, Text, Source string }

// Sentence is a line without emphasis.
func (l Line) Sentence() string {
	text := l.Strong + l.Text
	if l.Strong != "" && l.Text != "" {
		text = l.Strong + ": " + l.Text
	}
	if l.Lead != "" {
		text = l.Lead + ": " + text
	}
	if l.Source != "" {
		text += " [" + l.Source + "]"
	}
	return text
}

// Grid is a table.
type Grid struct {
	Caption string
	Shape   string   // of the card, as its rules prescribe it
	Lead    []string // lines above the columns
	Head    []string // the first is that of the labels
	Rows    []GridRow
}

// GridRow is a row of a table.
type GridRow struct {
	Label  string
	Indent int
	Whole  bool // the label is a whole line as the rules prescribe it; only the last cell follows
	Cells  []GridCell
}

// GridCell is a cell of a table; one of a matrix has a sign beside its words.
type GridCell struct {
	Text    string
	Sign    string
	Mark    string // "contains", "may", "check", "none": of a matrix
	Unknown bool   // nobody has determined it: hatched
	Path    string // where the documents have it, of a figure of a sheet on paper
}
