package store

import (
	"context"
	"strconv"
	"sync"

	"github.com/jmoiron/sqlx"
)

// mostShared is how many texts of a release are kept once. A table whose every value has a reference of its
// own has nothing to share, and its texts stand with their values.
const mostShared = 1 << 16

// sharing gives the texts of a release keys as it is loaded.
type sharing struct {
	keys   map[string]int64
	insert *sqlx.Stmt
	err    error // of writing one; the first
}

func newSharing(ctx context.Context, tx *sqlx.Tx) (*sharing, error) {
	insert, err := tx.PreparexContext(ctx, "INSERT INTO shared_text (release, text) VALUES (?, ?)")
	return &sharing{keys: map[string]int64{}, insert: insert}, err
}

// append writes what stands for a text: its key, or itself.
func (s *sharing) append(ctx context.Context, release int64, to []byte, text string) []byte {
	if text == "" {
		return append(to, "null"...)
	}
	key, known := s.keys[text]
	switch {
	case known:
	case len(s.keys) >= mostShared || s.err != nil:
		return appendQuoted(to, text)
	default:
		done, err := s.insert.ExecContext(ctx, release, text)
		if err == nil {
			key, err = done.LastInsertId()
		}
		if s.err = err; err != nil {
			return to
		}
		s.keys[text] = key
	}
	return strconv.AppendInt(to, key, 10)
}

// sharedTexts are texts that were read before. A key never stands for another text.
type sharedTexts struct {
	lock  sync.Mutex
	known map[int64]string
}

func (s *sharedTexts) of(ctx context.Context, read *sqlx.Stmt, key int64) (string, error) {
	s.lock.Lock()
	text, known := s.known[key]
	s.lock.Unlock()
	if known {
		return text, nil
	}
	if err := read.GetContext(ctx, &text, key); err != nil {
		return "", err
	}
	s.lock.Lock()
	defer s.lock.Unlock()
	if s.known == nil {
		s.known = map[int64]string{}
	}
	s.known[key] = text
	return text, nil
}
