package drink

import (
	"slices"
	"strings"

	"github.com/goccy/go-yaml/ast"

	"sipsum/internal/unit"
)

// countLine reads a line of a food that is counted: "2 leaves core:spearmint", "1/2 core:lemon-flesh".
// What a piece weighs the food's table knows. It tells whether the line was dealt with.
func (r *file) countLine(n ast.Node, text string, l *Line) bool {
	count, rest, ok := unit.ParseCount(text)
	if !ok {
		return false
	}
	first, food, _ := strings.Cut(rest, " ")
	word, isWord := unit.PortionWord(first)
	food = strings.TrimPrefix(strings.TrimSpace(food), "of ")
	switch {
	case isWord && food != "":
	case strings.Contains(first, ":"):
		word, food = unit.OnePiece, rest
	default:
		return r.countedRange(n, text)
	}
	l.FoodAt = r.inside(n, text, food)
	if fault, do := textFault(food, "the food", mostName); fault != "" {
		r.faults.Add(l.FoodAt, do, "%s", fault)
		return true
	}
	if count <= 0 || count > float64(mostServes) {
		r.faults.Add(r.nodeAt(n), "check the number", "%s is not a count", quoted(text))
		return true
	}
	l.Portion, l.Count, l.Counted, l.Food = word, count, true, smallTable(food)
	return true
}

// countedRange reports "2-3 leaves": how far a count may be off is not asked.
func (r *file) countedRange(n ast.Node, text string) bool {
	low, rest, _ := unit.ParseCount(text)
	rest = strings.TrimLeft(rest, "-–— ")
	high, after, ok := unit.ParseCount(strings.TrimPrefix(rest, "to "))
	first, _, _ := strings.Cut(after, " ")
	if _, isWord := unit.PortionWord(first); !ok || high <= low || !isWord {
		return false
	}
	before := r.before(r.nodeAt(n))
	r.faults.Add(r.nodeAt(n), "write: "+before+unit.Number(low)+" "+clip(after)+", or: "+before+unit.Number(high)+" "+clip(after)+"; or weigh them", "%s is a count, which takes no range", quoted(text))
	return true
}

// amountsByName reports a map that has foods for keys and amounts for values, "espresso: 36 g",
// with the lines that it should be.
func (r *file) amountsByName(n ast.Node, before string) bool {
	m, ok := n.(*ast.MappingNode)
	if !ok || len(m.Values) == 0 {
		return false
	}
	lines := make([]string, len(m.Values))
	for i, v := range m.Values {
		name, okName := raw(v.Key)
		value, okValue := raw(v.Value)
		if !okName || !okValue || slices.Contains(lineKeys.names(), asKnown(name, lineKeys.names())) {
			return false
		}
		line, ok := asLine(unit.PlainSpaces(value) + " " + name)
		if !ok {
			return false
		}
		lines[i] = line
	}
	for i, v := range m.Values {
		r.faults.Add(r.tokenAt(v.Key.GetToken()), "write: "+before+lines[i], "the amount comes before the food")
	}
	return true
}

// asLine gives a text as a line that can be read.
func asLine(text string) (string, bool) {
	_, food, err := unit.ParseAmount(text)
	if err == nil {
		return text, food != ""
	}
	return rewritten(err)
}

// notLines reports what stands where a list of lines was meant.
func (r *values) notLines(n ast.Node, what string) {
	if r.amountsByName(n, "- ") {
		return
	}
	if text, ok := raw(n); ok {
		if strings.HasPrefix(text, "-") && r.gluedDashes(n) {
			return
		}
		line, ok := asLine(unit.PlainSpaces(text))
		if !ok {
			line = "… g " + text
		}
		r.faults.Add(r.nodeAt(n), "write it on a line of its own: - "+clip(line), "%s must be a list", what)
		return
	}
	r.list(n, what)
}
