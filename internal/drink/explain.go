package drink

import (
	"errors"
	"strings"

	"github.com/goccy/go-yaml/token"
)

// explain reports an error of the YAML reader in the words of the kitchen and
// gives the line that it stands on, 0 if what follows cannot be read either.
func (r *file) explain(err error, tokens token.Tokens) int {
	var e syntaxError
	if !errors.As(err, &e) || e.GetToken() == nil {
		r.faults.Add(r.at(1, 1), "check quotes, brackets and indentation", "%s", clip(err.Error()))
		return 0
	}
	t, said := e.GetToken(), e.GetMessage()
	if cut := swallowing(tokens, t); cut != nil {
		r.reportHash(cut)
		return 0
	}
	at := r.tokenAt(t)
	what, do := "this cannot be read as YAML: "+clip(said), "check quotes, brackets and indentation"
	switch {
	case strings.Contains(said, "must be specified"), strings.Contains(said, "end token"):
		open := t
		if !opens(t) {
			open = unclosed(tokens, t)
		}
		if open == nil {
			break
		}
		closing := map[string]string{"[": "]", "{": "}"}[open.Value]
		what, do = "a comma or "+closing+" is missing here", "check the brackets; put quotes round texts that hold commas, colons or brackets"
		if open == t || open.Position.Line != t.Position.Line {
			at, what = r.tokenAt(open), "the "+open.Value+" that opens here is not closed"
		}
	case strings.Contains(said, "mapping value is not allowed"):
		what, do = "there is a second \": \" on this line", "put quotes round the text that holds a colon"
		if rows := keysInARow(r.rows[at.Line-1]); len(rows) > 1 {
			do = "write each on a line of its own: " + strings.Join(rows, " | ")
		}
	case strings.Contains(said, "reserved character"):
		what, do = "a text cannot begin with this character", "put quotes round the text"
	case strings.Contains(said, "end character of"):
		what, do = "the quote that opens here is not closed", "close it on the same line"
	case strings.Contains(said, "unexpected key name"):
		what, do = "this key runs over several lines", "write a space after the colon: key: value"
	case strings.Contains(said, "block sequence entries are not allowed"):
		what, do = "a list cannot begin here", "begin the list on the next line, or put quotes round a text that begins with -"
	case strings.Contains(said, "value is not allowed"), strings.Contains(said, "non-map value"):
		what, do = "this does not fit the lines above", "check its indentation, and that each key ends with a colon"
	}
	r.faults.Add(at, do, "%s", what)
	return at.Line
}

func opens(t *token.Token) bool {
	return t.Type == token.SequenceStartType || t.Type == token.MappingStartType
}

func closes(t *token.Token) bool {
	return t.Type == token.SequenceEndType || t.Type == token.MappingEndType
}

// unclosed gives the innermost bracket that is open where the error stands.
func unclosed(tokens token.Tokens, until *token.Token) *token.Token {
	var open []*token.Token
	for _, t := range tokens {
		if t == until {
			break
		}
		if opens(t) {
			open = append(open, t)
		} else if closes(t) && len(open) > 0 {
			open = open[:len(open)-1]
		}
	}
	if len(open) == 0 {
		return nil
	}
	return open[len(open)-1]
}

// swallowing gives the comment that cut a text inside brackets and took the
// closing bracket with it, before the place where the reader stumbled or after
// the bracket that it could not match.
func swallowing(tokens token.Tokens, until *token.Token) *token.Token {
	depth := 0
	for _, t := range tokens {
		if t == until && !opens(t) {
			break
		}
		switch {
		case opens(t):
			depth++
		case closes(t):
			depth--
		case t.Type == token.CommentType && depth > 0 && looksCut(t):
			return t
		}
	}
	return nil
}
