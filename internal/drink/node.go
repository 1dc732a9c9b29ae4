package drink

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/token"

	"sipsum/internal/fail"
)

// reader reads one file: the drink or a pantry.
type reader struct {
	file      string
	rows      []string // the lines of the file, without line ends
	faults    *fail.List
	open      func(path string) ([]byte, error) // nil in a pantry
	torn      bool                              // a line was set aside, so what seems missing may be there
	count     *int                              // ingredient lines of all files so far
	compareAt fail.Place                        // of compare-with, which is checked at the end
	counted   struct {
		row   string // the last line whose characters were counted
		runes int
	}
}

func (r *reader) setRows(text string) { r.rows = strings.Split(text, "\n") }

// at makes a place that lies within the file, whatever the YAML reader says.
func (r *reader) at(line, col int) fail.Place {
	if len(r.rows) > 0 {
		line = min(max(line, 1), len(r.rows))
		col = min(max(col, 1), r.runes(r.rows[line-1])+1)
	}
	return fail.Place{File: r.file, Line: line, Col: col}
}

// runes counts the characters of a line, once for all the places in it: a file may be
// one line with a fault at every other word.
func (r *reader) runes(row string) int {
	if r.counted.row != row { // the same text in memory is seen to be so at once
		r.counted.row, r.counted.runes = row, utf8.RuneCountInString(row)
	}
	return r.counted.runes
}

func (r *reader) tokenAt(t *token.Token) fail.Place {
	if t == nil || t.Position == nil {
		return r.at(1, 1)
	}
	return r.at(t.Position.Line, t.Position.Column)
}

// nodeAt gives where a node begins as a person sees it: a block map begins at
// its first key.
func (r *reader) nodeAt(n ast.Node) fail.Place {
	if m, ok := n.(*ast.MappingNode); ok && !m.IsFlowStyle && len(m.Values) > 0 {
		return r.tokenAt(m.Values[0].Key.GetToken())
	}
	return r.tokenAt(n.GetToken())
}

// reported tells the nodes that the check of tokens has reported already:
// anchors, aliases, tags, merge keys, complex keys.
func reported(n ast.Node) bool {
	switch n.(type) {
	case *ast.AnchorNode, *ast.AliasNode, *ast.TagNode, *ast.MergeKeyNode, *ast.MappingKeyNode, *ast.DirectiveNode:
		return true
	}
	return false
}

// raw gives the text of a scalar as its token has it, so that 0304, 1e3, yes
// and null stay text. A text block is read as one line.
func raw(n ast.Node) (string, bool) {
	switch v := n.(type) {
	case *ast.StringNode, *ast.IntegerNode, *ast.FloatNode, *ast.BoolNode, *ast.InfinityNode, *ast.NanNode:
		return n.GetToken().Value, true
	case *ast.NullNode:
		return v.Token.Value, v.Token.Type != token.ImplicitNullType
	case *ast.LiteralNode:
		return strings.Join(strings.Fields(v.Value.Value), " "), true
	}
	return "", false
}

// scalar gives the text of a scalar or reports what stands there instead.
func (r *reader) scalar(n ast.Node, what string) (string, bool) {
	if text, ok := raw(n); ok {
		text = strings.TrimSpace(text)
		if utf8.RuneCountInString(text) > mostProse {
			fault, do := textFault(text, what, mostProse)
			r.faults.Add(r.nodeAt(n), do, "%s", fault)
			return "", false
		}
		return text, true
	}
	switch v := n.(type) {
	case *ast.NullNode:
		r.missing(n, what)
	case *ast.MappingNode:
		r.faults.Add(r.nodeAt(n), quoteAdvice(""), "%s is a map where text was meant", what)
	case *ast.SequenceNode:
		r.faults.Add(r.tokenAt(v.Start), quoteAdvice(""), "%s is a list where text was meant", what)
	default:
		if !reported(n) {
			r.faults.Add(r.nodeAt(n), "", "%s cannot be read", what)
		}
	}
	return "", false
}

func (r *reader) missing(n ast.Node, what string) {
	if !r.torn {
		r.faults.Add(r.tokenAt(n.GetToken()), "write one, or take the key out", "%s has no value", what)
	}
}

// text gives a scalar that is meant for people or names something: not empty,
// not too long, without forbidden characters, not cut by YAML.
func (r *reader) text(n ast.Node, what string, most int) (string, bool) {
	if v, ok := n.(*ast.NullNode); ok && v.Token.Type != token.ImplicitNullType {
		r.faults.Add(r.tokenAt(v.Token), quoteAdvice(v.Token.Value), "YAML reads %s as nothing", v.Token.Value)
		return "", false
	}
	text, ok := r.scalar(n, what)
	if !ok {
		return "", false
	}
	if r.cutAtHash(n) {
		return "", false
	}
	if fault, do := textFault(text, what, most); fault != "" {
		r.faults.Add(r.nodeAt(n), do, "%s", fault)
		return "", false
	}
	return text, true
}

// name gives a text that lines refer to, with plain spaces.
func (r *reader) name(n ast.Node, what string) (string, bool) {
	text, ok := r.text(n, what, mostName)
	return plainSpaces(text), ok
}

// textFault says what is wrong with a text, "" if nothing is.
func textFault(text, what string, most int) (fault, do string) {
	if text == "" {
		return what + " is empty", "write some text, or take the key out"
	}
	if n := utf8.RuneCountInString(text); n > most {
		return fmt.Sprintf("%s has %d characters, at most %d are allowed", what, n, most), "shorten it"
	}
	for _, c := range text {
		if forbidden(c) {
			return fmt.Sprintf("%s holds %s", what, describe(c)), "take it out"
		}
	}
	return "", ""
}

// inside gives the place of the tail of a scalar's text, exact if the scalar
// stands in the file as it reads.
func (r *reader) inside(n ast.Node, text, tail string) fail.Place {
	t := n.GetToken()
	shift := utf8.RuneCountInString(text) - utf8.RuneCountInString(tail)
	switch text = plainSpaces(text); plainSpaces(strings.TrimSpace(t.Origin)) {
	case text:
		return r.at(t.Position.Line, t.Position.Column+shift)
	case `"` + text + `"`, `'` + text + `'`:
		return r.at(t.Position.Line, t.Position.Column+shift+1)
	}
	return r.tokenAt(t)
}

// list gives the entries of a list.
func (r *reader) list(n ast.Node, what string) ([]ast.Node, bool) {
	switch v := n.(type) {
	case *ast.SequenceNode:
		return v.Values, true
	case *ast.NullNode:
		r.missing(n, what)
	default:
		if !reported(n) {
			r.faults.Add(r.nodeAt(n), "write each entry on a line that begins with \"- \", or [a, b]", "%s must be a list", what)
		}
	}
	return nil, false
}

// texts gives a list of different texts.
func (r *reader) texts(n ast.Node, what string) []string {
	words := r.words(n, what, nil)
	if words == nil {
		return nil
	}
	out := make([]string, len(words))
	for i, w := range words {
		out[i] = w.Text
	}
	return out
}

// words gives a list of different texts with their places. If allowed is not empty each
// must be one of it.
func (r *reader) words(n ast.Node, what string, allowed []string) []Word {
	entries, ok := r.list(n, what)
	if !ok {
		return nil
	}
	out := []Word{}
	seen := map[string]bool{}
	for _, e := range entries {
		text, ok := r.text(e, "an entry of "+what, mostName)
		switch {
		case !ok:
			continue
		case seen[text]:
			r.faults.Add(r.nodeAt(e), "take one of them out", "%q stands twice in %s", clip(text), what)
			continue
		case len(allowed) > 0 && !r.oneOf(e, text, what, allowed):
			continue
		}
		seen[text] = true
		out = append(out, Word{r.nodeAt(e), text})
	}
	return out
}

// oneOf reports a text that is not one of a closed list.
func (r *reader) oneOf(n ast.Node, text, what string, allowed []string) bool {
	if slices.Contains(allowed, text) {
		return true
	}
	do := "use " + alternatives(allowed)
	if guess := near(text, allowed); guess != "" {
		do = fmt.Sprintf("did you mean %q? %s", guess, do)
	}
	r.faults.Add(r.nodeAt(n), do, "%s does not know %q", what, clip(text))
	return false
}
