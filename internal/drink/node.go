package drink

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/token"

	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

// values reads the nodes of a file: texts, lists, maps, amounts and quantities.
type values struct{ file }

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
func (r *values) scalar(n ast.Node, what string) (string, bool) {
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

func (r *values) missing(n ast.Node, what string) {
	if !r.torn {
		r.faults.Add(r.tokenAt(n.GetToken()), "write one, or take the key out", "%s has no value", what)
	}
}

// text gives a scalar that is meant for people or names something: not empty,
// not too long, without forbidden characters, not cut by YAML.
func (r *values) text(n ast.Node, what string, most int) (string, bool) {
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
func (r *values) name(n ast.Node, what string) (string, bool) {
	text, ok := r.text(n, what, mostName)
	return unit.PlainSpaces(text), ok
}

// textFault says what is wrong with a text, "" if nothing is.
func textFault(text, what string, most int) (fault, do string) {
	if text == "" {
		return what + " is empty", "write some text, or take the key out"
	}
	if n := utf8.RuneCountInString(text); n > most {
		return fmt.Sprintf("%s has %d characters, at most %d are allowed", what, n, most), "shorten it"
	}
	if at, c := hidden(text); at > 0 {
		return fmt.Sprintf("%s holds %s", what, describe(c)), "take it out: " + clip(visible(text))
	}
	for _, c := range text {
		if forbidden(c) {
			return fmt.Sprintf("%s holds %s", what, describe(c)), "take it out"
		}
	}
	return "", ""
}

// list gives the entries of a list.
func (r *values) list(n ast.Node, what string) ([]ast.Node, bool) {
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
func (r *values) texts(n ast.Node, what string) []string {
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
func (r *values) words(n ast.Node, what string, allowed []string) []Word {
	if text, alone := raw(n); alone && !implicitNull(n) && !reported(n) {
		r.faults.Add(r.nodeAt(n), "write: "+what+": ["+strings.Join(strings.Fields(strings.ReplaceAll(clip(text), ",", " ")), ", ")+"]", "%s must be a list", what)
		return nil
	}
	entries, ok := r.list(n, what)
	if !ok {
		return nil
	}
	out := []Word{}
	seen := map[string]bool{}
	for _, e := range entries {
		text, ok := r.name(e, "an entry of "+what)
		if len(allowed) > 0 {
			text = asKnown(text, allowed)
		}
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
func (r *values) oneOf(n ast.Node, text, what string, allowed []string) bool {
	if slices.Contains(allowed, text) {
		return true
	}
	r.faults.Add(r.nodeAt(n), guess(text, allowed, "use "+fail.Or(allowed)), "%s does not know %q", what, clip(text))
	return false
}
