package store

import (
	"context"
	"maps"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/jmoiron/sqlx"
)

// vocabulary counts the words of the names of a release: in how many names each is.
type vocabulary struct {
	names map[string]int // by word
	seen  map[string]bool
}

func newVocabulary() *vocabulary { return &vocabulary{map[string]int{}, map[string]bool{}} }

// add counts the words of a name; a number is nobody's slip for another and is left out.
func (v *vocabulary) add(name string) {
	clear(v.seen)
	for _, word := range tokens(name) {
		if isNumber(word) || v.seen[word] {
			continue
		}
		v.seen[word] = true
		if _, known := v.names[word]; !known {
			word = strings.Clone(word) // of the whole name
		}
		v.names[word]++
	}
}

// insert writes the words, those of as many letters as one text.
func (v *vocabulary) insert(ctx context.Context, tx *sqlx.Tx, release int64) error {
	texts := map[int][]byte{} // by letters
	for _, word := range slices.Sorted(maps.Keys(v.names)) {
		letters := utf8.RuneCountInString(word)
		text := append(texts[letters], '\n')
		text = append(text, word...)
		texts[letters] = strconv.AppendInt(append(text, ' '), int64(v.names[word]), 10)
	}
	for letters, text := range texts {
		_, err := tx.ExecContext(ctx, "INSERT INTO vocabulary (release, letters, words) VALUES (?, ?, ?)", release, letters, string(text)+"\n")
		if err != nil {
			return err
		}
	}
	return nil
}
