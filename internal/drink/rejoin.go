package drink

import (
	"unicode/utf8"

	"github.com/goccy/go-yaml/token"
)

// rejoin puts texts together that the YAML library cuts at a colon inside { }:
// in "{fat: [60 g core:butter]}" it sees a map with the key "60 g core". YAML
// 1.2.2, 7.3.3, has a colon end a plain text only before a space or, inside
// brackets, before one of their signs.
func rejoin(tokens token.Tokens) token.Tokens {
	whole := make(token.Tokens, 0, len(tokens))
	for i := 0; i < len(tokens); i++ {
		t := tokens[i]
		if i+2 < len(tokens) && isPlain(t) && touch(t, tokens[i+1], tokens[i+2]) {
			value := tokens[i+2]
			joined := *t
			joined.Type = token.StringType
			joined.Value += ":" + value.Value
			joined.Origin += ":" + value.Origin
			joined.Next = value.Next
			if joined.Prev != nil {
				joined.Prev.Next = &joined
			}
			if joined.Next != nil {
				joined.Next.Prev = &joined
			}
			t = &joined
			i += 2
		}
		whole = append(whole, t)
	}
	return whole
}

// touch tells whether a colon stands between two texts without a space.
func touch(before, colon, after *token.Token) bool {
	if colon.Type != token.MappingValueType || !isPlain(after) {
		return false
	}
	a, c, b := before.Position, colon.Position, after.Position
	return a.Line == c.Line && c.Line == b.Line &&
		c.Column == a.Column+utf8.RuneCountInString(before.Value) && b.Column == c.Column+1
}

// isPlain tells a text without quotes, whatever type YAML gives it.
func isPlain(t *token.Token) bool {
	switch t.Type {
	case token.StringType, token.IntegerType, token.FloatType, token.OctetIntegerType, token.HexIntegerType,
		token.BinaryIntegerType, token.BoolType, token.NullType, token.InfinityType, token.NanType:
		return t.Indicator == token.NotIndicator
	}
	return false
}
