package invent

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/food"
)

// file is the text of a drink into which a design is written; comments and layout stay.
type file struct {
	drink *drink.Drink
	text  []byte
}

// potName is what the pot of a preparation is called: by the food, and so that no other pot is.
func (f file) potName(l liquid) string {
	name := strings.ReplaceAll(l.by.called, "{}", potWords(l.food))
	for n := 2; ; n++ {
		if _, taken := f.drink.Component(name); !taken {
			return name
		}
		name = strings.TrimRight(name, "0123456789 ") + " " + strconv.Itoa(n)
	}
}

// potWords are the words of a food's name that can stand in that of a pot.
func potWords(of *food.Food) string {
	words := strings.FieldsFunc(Short(of), func(r rune) bool { return strings.ContainsRune(":#\"'{}[],&*!|>%@`\\()/", r) })
	text := strings.Join(strings.Fields(strings.Join(words, " ")), " ")
	return strings.TrimLeft(text, "0123456789 ")
}

// with writes the drink's file with more lines in its build, as its first or its last, and the pots that they
// pour.
func (f file) with(parts []Part) (text []byte, first bool, err error) {
	rows := strings.SplitAfter(string(f.text), "\n")
	last := f.drink.Build[len(f.drink.Build)-1]
	at := last.Place
	if at.File != f.drink.File || at.Line == 0 || at.Line > len(rows) {
		return nil, false, fail.New(fail.Wrong, "the build of the drink stands in no file that can be written", "save the drink to a file of its own")
	}
	eol := "\n"
	if strings.HasSuffix(rows[at.Line-1], "\r\n") {
		eol = "\r\n"
	}
	lines := make([]string, len(parts))
	for i, p := range parts {
		lines[i] = lineOf(p)
	}
	if row := rows[at.Line-1]; strings.HasPrefix(strings.TrimLeft(row, " "), "- ") {
		end := at.Line
		if !strings.HasSuffix(row, "\n") {
			rows[at.Line-1] = row + eol
		}
		deep := indent(row)
		for end < len(rows) && strings.TrimSpace(rows[end]) != "" && indent(rows[end]) > deep {
			end++
		}
		var more []string
		for _, line := range lines {
			more = append(more, strings.Repeat(" ", deep)+"- "+line+eol)
		}
		rows = slices.Insert(rows, end, more...)
	} else if first, err = true, f.into(rows, lines); err != nil {
		return nil, first, err
	}
	return f.pots(strings.Join(rows, ""), parts, eol), first, nil
}

// into writes lines into a list that stands in one row, before its first.
func (f file) into(rows, lines []string) error {
	at := f.drink.Build[0].Place
	row := []rune(rows[at.Line-1])
	from := min(max(at.Col-1, 0), len(row))
	for from > 0 && row[from-1] != '[' && row[from-1] != '\n' {
		from--
	}
	if from == 0 {
		return fail.New(fail.Wrong, "the build of the drink is not found in the file's text", "write its lines below each other, each after a dash")
	}
	rows[at.Line-1] = string(row[:from]) + strings.Join(lines, ", ") + ", " + strings.TrimLeft(string(row[from:]), " ")
	return nil
}

func indent(row string) int { return len(row) - len(strings.TrimLeft(row, " ")) }

// lineOf is the line that pours a part, quoted where a list in one row needs it.
func lineOf(p Part) string {
	text := strconv.FormatFloat(p.Pour.Number, 'f', p.Pour.Decimals, 64) + " g " + p.Name
	if quoted(text) != text || strings.Contains(p.Name, ",") {
		return fmt.Sprintf("%q", text)
	}
	return text
}

// pots writes the pots that parts pour, before all others.
func (f file) pots(text string, parts []Part, eol string) []byte {
	var more string
	for _, p := range parts {
		if p.By.Pot() {
			more += liquid{food: p.Food, by: p.By}.pot(p.Name, eol)
		}
	}
	if more == "" {
		return []byte(text)
	}
	rows := strings.SplitAfter(text, "\n")
	for i, row := range rows {
		if head, _, _ := strings.Cut(row, "#"); strings.TrimRight(head, " \r\n") == "components:" {
			return []byte(strings.Join(rows[:i+1], "") + more + strings.Join(rows[i+1:], ""))
		}
	}
	return []byte(strings.TrimRight(text, "\r\n") + eol + "components:" + eol + more)
}
