package drink

import (
	"cmp"
	"fmt"
	"strings"

	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/lexer"
	"github.com/goccy/go-yaml/parser"
	"github.com/goccy/go-yaml/token"
)

// How many unreadable lines are set aside before reading stops. Each time the
// whole file is read again, so long files get fewer tries.
const mostSetAside = 20

// document reads the YAML of a file. A line that YAML cannot read is reported;
// if it stands alone it is set aside and the rest is read, so that one bad line
// does not hide the other faults. It gives nil if nothing can be read.
func (r *file) document(raw []byte) ast.Node {
	text, ok := r.hygiene(raw)
	if !ok {
		return nil
	}
	for try := 0; ; try++ {
		tokens := rejoin(lexer.Tokenize(text))
		if !r.withinLimits(tokens) {
			return nil
		}
		if try == 0 {
			r.refuseForms(tokens)
		}
		file, err := parse(tokens)
		if err == nil {
			if len(file.Docs) == 0 || file.Docs[0].Body == nil {
				r.faults.Add(r.at(1, 1), cmp.Or(r.begins, beginsDrink), "the file holds nothing but comments")
				return nil
			}
			return file.Docs[0].Body
		}
		if try < mostSetAside && try*len(text) <= mostBytes && r.parted(err) {
			text = strings.Join(r.rows, "\n")
			continue
		}
		line := r.explain(err, tokens)
		if try == mostSetAside || try*len(text) > mostBytes || !standsAlone(r.rows, line) {
			return nil
		}
		r.torn = true
		r.rows[line-1] = ""
		text = strings.Join(r.rows, "\n")
	}
}

// syntaxError is what the YAML reader says: a sentence and a token.
type syntaxError interface {
	error
	GetToken() *token.Token
	GetMessage() string
}

// parse keeps a fault of the YAML library from ending the program.
func parse(tokens token.Tokens) (file *ast.File, err error) {
	defer func() {
		if p := recover(); p != nil {
			err = fmt.Errorf("the YAML reader gave up: %v", p)
		}
	}()
	return parser.Parse(tokens, 0, parser.AllowDuplicateMapKey())
}

// standsAlone tells whether a line can be set aside without changing how others
// are read: an entry or a key with its value on one line, nothing below it, no
// bracket or quote left open.
func standsAlone(lines []string, number int) bool {
	if number < 1 || number > len(lines) {
		return false
	}
	line := lines[number-1]
	body := strings.TrimLeft(line, " ")
	for _, pair := range []string{"[]", "{}"} {
		if strings.Count(body, pair[:1]) != strings.Count(body, pair[1:]) {
			return false
		}
	}
	if strings.Count(body, `"`)%2 != 0 || !strings.HasPrefix(body, "- ") && !strings.Contains(body, ": ") {
		return false
	}
	for _, next := range lines[number:] {
		if rest := strings.TrimLeft(next, " "); rest != "" && rest[0] != '#' {
			return len(next)-len(rest) <= len(line)-len(body)
		}
	}
	return true
}

// withinLimits bounds what the YAML reader is given: tokens, depth, keys of one
// block map. It reads tokens and not nodes because the reader calls itself for
// each of these.
func (r *file) withinLimits(tokens token.Tokens) bool {
	if len(tokens) > mostTokens {
		r.faults.Add(r.tokenAt(tokens[mostTokens]), "split it, or move foods and components to a shelf, a file named in use:", "the file has more than %d words and signs", mostTokens)
		return false
	}
	type level struct{ col, keys int }
	var block []level
	flow := 0
	for _, t := range tokens {
		col := 0
		switch {
		case opens(t):
			flow++
		case closes(t):
			flow = max(flow-1, 0)
		case t.Type == token.SequenceEntryType:
			col = t.Position.Column
		case t.Type == token.MappingValueType && t.Prev != nil:
			col = t.Prev.Position.Column
		}
		if col > 0 && flow == 0 {
			for len(block) > 0 && block[len(block)-1].col > col {
				block = block[:len(block)-1]
			}
			if len(block) == 0 || block[len(block)-1].col < col {
				block = append(block, level{col: col})
			}
			if t.Type == token.MappingValueType {
				block[len(block)-1].keys++
			}
			if block[len(block)-1].keys > mostKeys {
				r.faults.Add(r.tokenAt(t), "split it", "a map has more than %d keys", mostKeys)
				return false
			}
		}
		if flow+len(block) > mostDepth {
			r.faults.Add(r.tokenAt(t), "write it flatter", "lists and maps stand more than %d deep in each other", mostDepth)
			return false
		}
	}
	return true
}

// refuseForms reports the forms of YAML that a drink file does not use.
func (r *file) refuseForms(tokens token.Tokens) {
	for i, t := range tokens {
		what, do := "", ""
		switch t.Type {
		case token.AnchorType, token.AliasType:
			what, do = "anchors and aliases (& and *) are not used", "write the text out; put quotes round it if it begins with "+t.Value
		case token.TagType:
			what, do = "tags (!) are not used", "take it out; put quotes round the text if it begins with !"
		case token.MergeKeyType:
			what, do = "merge keys (<<) are not used", "write the keys out"
		case token.MappingKeyType:
			what, do = "keys written with ? are not used", "write key: value; put quotes round the text if it begins with ?"
		case token.DirectiveType:
			r.faults.Add(r.tokenAt(t), "take the line out", "YAML directives (%%) are not used")
			return
		case token.DocumentHeaderType:
			if i > 0 {
				what, do = "a second document begins here", "write one drink in one file"
			}
		case token.DocumentEndType:
			if i < len(tokens)-1 {
				what, do = "the document ends here, but the file goes on", "take the line ... out"
			}
		}
		if what != "" {
			r.faults.Add(r.tokenAt(t), do, "%s", what)
		}
	}
}
