package drink

import (
	"errors"
	"strings"

	"github.com/goccy/go-yaml/ast"

	"sipsum/internal/unit"
)

// lineKeys is the long form of a line.
var lineKeys = grammar[Line]{"a line", []key[Line]{
	{"food", "a component, table:code, or the name of a food", true, textShape(mostName), func(r *reader, l *Line, n ast.Node) {
		l.Food, _ = r.food(n)
		l.FoodAt = r.nodeAt(n)
	}},
	{"amount", "how much: 20 g ± 1 g", false, amountShape(anyMeasure), func(r *reader, l *Line, n ast.Node) {
		if a := r.amount(n, "amount", anyMeasure); a != nil {
			l.Amount = *a
		}
	}},
	text("portion", "a portion that the food's table describes, with count", false, mostName, func(l *Line) *string { return &l.Portion }),
	into("count", "how many portions", false, numberShape, (*reader).countOf, func(l *Line) *float64 { return &l.Count }),
	word("as", "edible: the amount is of the edible part; whole: with skin and stones", false, []string{"edible", "whole"}, func(l *Line) *string { return &l.As }),
	{"fill", "table:code of the food that lends what this one does not state", false, textShape(mostName), func(r *reader, l *Line, n ast.Node) {
		l.Fill, _ = r.tableCode(n, "fill")
	}},
	text("note", "a remark", false, mostProse, func(l *Line) *string { return &l.Note }),
	into("eaten", "true for a garnish that is eaten; else it stays behind and counts for allergens only", false, shape{"type": "boolean"},
		(*reader).truth, func(l *Line) *bool { return &l.Eaten }),
}}

// lines reads a list of lines. Owner is the part of the path that they share.
// Lines at fault are reported and left out.
func (r *reader) lines(n ast.Node, what, owner string) []Line {
	list, ok := n.(*ast.SequenceNode)
	if !ok {
		r.notLines(n, what)
		return nil
	}
	if len(list.Values) == 0 {
		r.faults.Add(r.tokenAt(list.Start), "write at least one line, such as \"- 20 g espresso\", or take the key out", "%s is empty", what)
	}
	before := r.faults.Len()
	return r.linesOf(r.commaCuts(list), owner, before)
}

// oneOrMore reads a list of lines or a single line.
func (r *reader) oneOrMore(n ast.Node, what, owner string) []Line {
	if _, isList := n.(*ast.SequenceNode); isList || implicitNull(n) || reported(n) {
		return r.lines(n, what, owner)
	}
	return r.linesOf([]ast.Node{n}, owner, r.faults.Len())
}

// linesOf reads lines, of which something may have been reported since before.
func (r *reader) linesOf(items []ast.Node, owner string, before int) []Line {
	var lines []Line
	twins := occurrences{}
	for _, item := range items {
		if !r.room(item) {
			break
		}
		if l, ok := r.line(item, owner != garnish); ok {
			l.Path = twins.path(owner, identity(l.Food))
			lines = append(lines, l)
		}
	}
	if r.faults.Len() == before && len(lines) > 0 {
		r.needsAbsolute(lines)
	}
	return lines
}

// room counts a line and reports the first that is too many.
func (r *reader) room(n ast.Node) bool {
	*r.count++
	if *r.count == mostLines+1 {
		r.faults.Add(r.nodeAt(n), "make the drink of fewer lines, or use fewer shelves", "there are more than %d ingredient lines", mostLines)
	}
	return *r.count <= mostLines
}

// needsAbsolute reports a list of shares that are shares of nothing.
func (r *file) needsAbsolute(lines []Line) {
	for _, l := range lines {
		if l.Portion != "" || l.Amount.Measure.Kind != unit.Share {
			return
		}
	}
	r.faults.Add(lines[0].Place, "give at least one line of the list a mass or a volume", "%% is a share of the other lines, and there is none")
}

// line reads one line, short or long. eaten is what holds of a line that does not say.
func (r *reader) line(n ast.Node, eaten bool) (Line, bool) {
	before := r.faults.Len()
	l := Line{Place: r.nodeAt(n), Eaten: eaten}
	if _, isMap := n.(*ast.MappingNode); isMap {
		if r.amountsByName(n, r.before(r.nodeAt(n))) || r.mapForLine(n) {
			return Line{}, false
		}
		present, _ := lineKeys.read(r, &l, n)
		r.oneWayToMeasure(n, present)
	} else {
		r.shortLine(n, &l)
	}
	ok := r.faults.Len() == before && l.Food != ""
	r.mention(n, l, ok)
	return l, ok
}

// oneWayToMeasure reports a long line without an amount, or with two.
func (r *file) oneWayToMeasure(n ast.Node, present present) {
	amount, portion, count := present.has("amount"), present.has("portion"), present.has("count")
	switch {
	case amount && portion:
		r.faults.Add(present["portion"], "keep one of them", "a line has an amount or a portion, not both")
	case amount && count:
		r.faults.Add(present["count"], "count goes with portion; take one of them out", "a line with an amount has no count")
	case portion != count:
		r.faults.Add(r.nodeAt(n), "write portion and count together", "a portion needs its count and a count its portion")
	case !amount && !portion && !r.torn:
		r.faults.Add(r.nodeAt(n), "add amount: 20 g, or portion and count", "a line needs an amount")
	}
}

// shortLine reads "AMOUNT FOOD".
func (r *reader) shortLine(n ast.Node, l *Line) {
	if list, ok := n.(*ast.SequenceNode); ok {
		r.faults.Add(r.tokenAt(list.Start), "take the inner brackets or dashes out", "a list stands where a line was meant")
		return
	}
	if text, ok := raw(n); ok && numberAlone(n) {
		r.faults.Add(r.nodeAt(n), "write a number, a unit and the food, such as \"36 g espresso\"; "+quoteAdvice(""), "%s is a number where a line was meant", quoted(text))
		return
	}
	if r.runsOn(n) {
		return
	}
	text, ok := r.text(n, "a line", mostName+mostName)
	if !ok {
		return
	}
	text = unit.PlainSpaces(text)
	amount, food, err := unit.ParseAmount(text)
	if err != nil {
		if !r.countLine(n, text, l) {
			r.misread(r.nodeAt(n), err)
			if !strings.ContainsAny(text, "0123456789:") && isFoodAlone(err) {
				l.Food, l.FoodAt = text, r.nodeAt(n) // whether there is such a food is told as well
			}
		}
		return
	}
	if food == "" {
		r.faults.Add(r.nodeAt(n), "write the food after it: "+r.before(r.nodeAt(n))+amount.String()+" FOOD", "there is no food after %s", quoted(text))
		return
	}
	l.FoodAt = r.inside(n, text, food)
	if fault, do := textFault(food, "the food", mostName); fault != "" {
		r.faults.Add(l.FoodAt, do, "%s", fault)
		return
	}
	for _, sign := range []string{"+/-", "+-", "±"} {
		if strings.HasPrefix(food, sign) {
			r.faults.Add(l.FoodAt, "write ± once: \"36 g ± 3 g espresso\"", "%s is not read as a range", quoted(food))
			return
		}
	}
	if r.sound(n, "the amount", amount, anyMeasure) {
		l.Amount, l.Food = amount, smallTable(food)
	}
}

// isFoodAlone tells the error of a text without an amount, which may be a food.
func isFoodAlone(err error) bool {
	var m *unit.Misread
	return errors.As(err, &m) && m.Alone
}

// food reads the name of a food or component in the long form.
func (r *reader) food(n ast.Node) (string, bool) {
	text, ok := r.name(n, "food")
	if ok && numberAlone(n) {
		r.faults.Add(r.nodeAt(n), "write the table before the code, such as \"sr:"+text+"\"; "+quoteAdvice(text), "%s is a number where a food was meant", quoted(text))
		return "", false
	}
	return smallTable(text), ok
}

// countOf reads the number of portions.
func (r *reader) countOf(n ast.Node, what string) float64 {
	text, ok := r.scalar(n, what)
	if !ok {
		return 0
	}
	q, err := unit.Scale{What: "count", Units: []string{""}, High: float64(mostServes), Example: "1/2"}.Parse(text)
	if err != nil {
		r.misread(r.nodeAt(n), err)
		return 0
	}
	if q.Number == 0 || q.Half > 0 || q.Exact {
		r.faults.Add(r.nodeAt(n), "write a number above zero, without ±", "%s is not a count", quoted(text))
	}
	return q.Number
}

// truth reads true or false.
func (r *values) truth(n ast.Node, what string) bool {
	text, ok := r.scalar(n, what)
	if ok && text != "true" && text != "false" {
		r.faults.Add(r.nodeAt(n), "write true or false", "%s is %s", what, quoted(text))
	}
	return text == "true"
}
