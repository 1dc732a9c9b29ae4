package drink

import (
	"errors"
	"slices"
	"strings"
	"unicode"

	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/token"

	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

// This file knows the slips that YAML makes of a plain line of a recipe. Each
// reads as valid YAML and means something else.

// looksCut tells whether a comment is the tail of a text: "rum #2" is, while a
// real comment is written "# text", with a space.
func looksCut(comment *token.Token) bool {
	first := []rune(comment.Value + " ")[0]
	return unicode.IsLetter(first) || unicode.IsDigit(first)
}

// cutAtHash reports a plain text that " #" has cut.
func (r *values) cutAtHash(n ast.Node) bool {
	s, ok := n.(ast.ScalarNode)
	if !ok {
		return false
	}
	t := s.GetToken()
	if t.Type == token.SingleQuoteType || t.Type == token.DoubleQuoteType || t.Next == nil || t.Next.Type != token.CommentType {
		return false
	}
	if t.Next.Position.Line != lastLine(t) || !looksCut(t.Next) {
		return false
	}
	r.reportHash(t.Next)
	return true
}

func (r *file) reportHash(comment *token.Token) {
	r.faults.Add(r.tokenAt(comment), "put quotes round the whole text; a comment is written \"# like this\", with a space",
		"the text is cut here: YAML takes #%s for a comment", clip(comment.Value))
}

// lastLine gives the line on which a plain scalar ends.
func lastLine(t *token.Token) int {
	return t.Position.Line + strings.Count(strings.TrimSpace(t.Origin), "\n")
}

// runsOn reports a plain line that YAML joined with the next one.
func (r *values) runsOn(n ast.Node) bool {
	s, ok := n.(*ast.StringNode)
	if !ok || s.Token.Type != token.StringType || !strings.Contains(strings.TrimSpace(s.Token.Origin), "\n") {
		return false
	}
	r.faults.Add(r.nodeAt(n), "begin each line with \"- \" at the same indentation, or put quotes round a long text",
		"this line runs on into the next: %s", quoted(s.Token.Value))
	return true
}

// mapForLine reports a map that stands where a line was meant because the text
// holds a colon and a space.
func (r *values) mapForLine(n ast.Node) bool {
	m, ok := n.(*ast.MappingNode)
	if !ok || m.IsFlowStyle || len(m.Values) == 0 {
		return false
	}
	first, ok := raw(m.Values[0].Key)
	if !ok || !startsLikeLine(first) {
		return false
	}
	text := first + ":"
	if value, ok := raw(m.Values[0].Value); ok {
		text += " " + value
	}
	r.faults.Add(r.nodeAt(n), quoteAdvice(text), "YAML makes a map of this line because of its colon")
	return true
}

// startsLikeLine tells texts that can only be meant as one: an amount, or an
// expression with brackets.
func startsLikeLine(text string) bool {
	return text != "" && (unicode.IsDigit([]rune(text)[0]) || strings.ContainsAny(text, "() "))
}

// numberAlone tells a plain text that YAML reads as a number or a truth value.
func numberAlone(n ast.Node) bool {
	switch n.(type) {
	case *ast.IntegerNode, *ast.FloatNode, *ast.InfinityNode, *ast.NanNode, *ast.BoolNode:
		return true
	}
	return false
}

// commaCuts finds the entries of a [ ] list that a comma has cut, reports them
// and gives the rest. "12,5 g rum" becomes 12 and "5 g rum"; the second would
// pass for a line of its own.
func (r *values) commaCuts(list *ast.SequenceNode) []ast.Node {
	if !list.IsFlowStyle {
		return list.Values
	}
	var whole []ast.Node
	for i := 0; i < len(list.Values); i++ {
		n := list.Values[i]
		if i+1 < len(list.Values) && decimalComma(n, list.Values[i+1]) {
			a, _ := raw(n)
			b, _ := raw(list.Values[i+1])
			r.decimalComma(r.nodeAt(n), "", a+","+b)
			i++
			continue
		}
		if text, ok := raw(n); ok && i > 0 && !unicode.IsDigit([]rune(text + " ")[0]) && !isQuoted(n) {
			r.faults.Add(r.nodeAt(n), "put quotes round the whole line if the comma before it belongs to the food", "%s does not begin with an amount", quoted(text))
			continue
		}
		whole = append(whole, n)
	}
	return whole
}

// decimalComma tells two neighbours in brackets that were one number.
func decimalComma(a, b ast.Node) bool {
	first, okA := raw(a)
	second, okB := raw(b)
	return okA && okB && onlyDigits(first) && second != "" && unicode.IsDigit([]rune(second)[0]) && strings.HasPrefix(b.GetToken().Origin, second[:1])
}

// decimalComma reports a text that a comma in brackets has cut, as it should be.
func (r *file) decimalComma(at fail.Place, before, text string) {
	_, _, err := unit.ParseAmount(text)
	var m *unit.Misread
	if !errors.As(err, &m) || len(m.Write) == 0 { // no kitchen measure
		m = &unit.Misread{What: quoted(text) + " has a comma", Write: []string{strings.Replace(text, ",", ".", 1)}}
	}
	r.faults.Add(at, m.Advice(before), "%s", m.What)
}

func onlyDigits(text string) bool {
	return text != "" && strings.Trim(text, "0123456789") == ""
}

func isQuoted(n ast.Node) bool {
	t := n.GetToken().Type
	return t == token.SingleQuoteType || t == token.DoubleQuoteType
}

// commaCutKeys does the same for a { } map: a key without a colon is the tail of
// the entry before it. Entries that lost their tail are marked spoilt.
func (r *values) commaCutKeys(entries []entry, known []string) []entry {
	var whole []entry
	for i, e := range entries {
		_, _, glued := gluedKey(e.key, known)
		if !e.flow || !implicitNull(e.value) || i == 0 || slices.Contains(known, e.key) || glued {
			whole = append(whole, e)
			continue
		}
		before := entries[i-1]
		if len(whole) > 0 && !whole[len(whole)-1].spoilt {
			whole[len(whole)-1].spoilt = true
			if decimalComma(before.value, e.node) {
				a, _ := raw(before.value)
				r.decimalComma(r.nodeAt(before.value), before.key+": ", a+","+e.key)
				continue
			}
			r.faults.Add(e.at, "put quotes round the whole text, comma included", "the comma before %s ends the text of %s", quoted(e.key), quoted(before.key))
		}
	}
	return whole
}

func implicitNull(n ast.Node) bool {
	v, ok := n.(*ast.NullNode)
	return ok && v.Token.Type == token.ImplicitNullType
}
