package claim

import (
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"
)

// sort is what a token is.
type sort int

const (
	end sort = iota
	number
	word // a name: a function, a tag, a word of the grammar
	quote
	sign
)

// token is a piece of an expression. at counts its characters from 0.
type token struct {
	sort sort
	text string // of a quote without its marks
	unit string // of a number
	at   int
}

// said is a token as an error shows it.
func (t token) said() string {
	switch t.sort {
	case end:
		return "the end"
	case quote:
		return `"` + t.text + `"`
	}
	return `"` + strings.TrimSpace(t.text+" "+t.unit) + `"`
}

var (
	numberForm = regexp.MustCompile(`^(?:[0-9]+(?:[.,][0-9]+)*|[.,][0-9]+)`)
	unitForm   = regexp.MustCompile(`^ ?(?:% ?vol\b|%|[°º]?[A-Za-zµμ]+(?:/(?:100 ?)?(?:ml|mL|l|L|g|kg)\b)?)`)
	wordForm   = regexp.MustCompile(`^\pL[\pL\pN_:-]*`)
	signForm   = regexp.MustCompile(`^(?:<=|>=|=<|=>|==|!=|&&|\|\||[-−+*×/÷<>=≤≥≠(),])`)
)

// same are signs that mean another.
var same = map[string]string{"≤": "<=", "≥": ">=", "=<": "<=", "=>": ">=", "−": "-", "×": "*", "÷": "/"}

// reserved are the words of the grammar: none is a unit.
var reserved = map[string]bool{"and": true, "or": true, "not": true, "between": true}

// lex cuts an expression into tokens, the end last.
func lex(text string) ([]token, *fault) {
	var list []token
	for at := 0; at < len(text); {
		rest := text[at:]
		here := utf8.RuneCountInString(text[:at])
		c, size := utf8.DecodeRuneInString(rest)
		switch m := numberForm.FindString(rest); {
		case unicode.IsSpace(c):
			at += size
		case m != "":
			unit := unitForm.FindString(rest[len(m):])
			if reserved[strings.TrimSpace(unit)] || strings.HasPrefix(rest[len(m)+len(unit):], "(") {
				unit = "" // a word of the grammar, or a figure
			}
			list = append(list, token{number, m, strings.TrimSpace(unit), here})
			at += len(m) + len(unit)
		case c == '"' || c == '“' || c == '\'':
			inner, length, ok := quoted(rest, c)
			if !ok {
				return nil, &fault{here, "a quotation mark is opened and not closed", "close it: share(MALAC, \"cherry syrup\") >= 50 %"}
			}
			list = append(list, token{quote, inner, "", here})
			at += length
		case wordForm.MatchString(rest):
			m := wordForm.FindString(rest)
			list = append(list, token{word, m, "", here})
			at += len(m)
		case signForm.MatchString(rest):
			m := signForm.FindString(rest)
			as := m
			if s, ok := same[m]; ok {
				as = s
			}
			list = append(list, token{sign, as, "", here})
			at += len(m)
		default:
			return nil, &fault{here, "the sign \"" + string(c) + "\" means nothing here", "take it out"}
		}
	}
	return append(list, token{end, "", "", utf8.RuneCountInString(text)}), nil
}

// quoted gives what stands between quotation marks, and how many bytes they take with it.
func quoted(text string, mark rune) (inner string, length int, ok bool) {
	closing := string(mark)
	if mark == '“' {
		closing = "”"
	}
	open := utf8.RuneLen(mark)
	n := strings.Index(text[open:], closing)
	if n < 0 {
		return "", 0, false
	}
	return strings.TrimSpace(text[open : open+n]), open + n + len(closing), true
}
