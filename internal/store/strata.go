package store

import (
	"context"

	"github.com/jmoiron/sqlx"

	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// stratum is the foods of a release and a group, as far as they state something of a constituent; constituent 0 is
// all of them.
type stratum struct {
	group       string
	constituent int64
}

// counted is what is known of a stratum.
type counted struct {
	key        int64
	some, none int
}

// strata counts the foods of a release by group and constituent. Their keys rise, so that what is ranked goes to
// the end of its table.
type strata struct {
	next  int64
	known map[stratum]*counted
}

func newStrata(ctx context.Context, tx *sqlx.Tx) (*strata, error) {
	s := &strata{known: map[stratum]*counted{}}
	return s, tx.GetContext(ctx, &s.next, "SELECT coalesce(max(key), 0) + 1 FROM stratum")
}

// of gives a stratum that is counted, from now on if need be.
func (s *strata) of(at stratum) *counted {
	c, known := s.known[at]
	if !known {
		c = &counted{key: s.next}
		s.next++
		s.known[at] = c
	}
	return c
}

// states counts what a food states and tells whether that is more than nothing.
func (c *counted) states(v food.Value) (some bool) {
	switch {
	case v.Amount > 0:
		c.some++
		return true
	case food.Stated(v.Amount) || v.State != estimate.Unknown:
		c.none++
	}
	return false
}

// insert writes what was counted.
func (s *strata) insert(ctx context.Context, tx *sqlx.Tx, release int64) error {
	for at, c := range s.known {
		_, err := tx.ExecContext(ctx, "INSERT INTO stratum (key, release, our_group, constituent, some, none) VALUES (?, ?, ?, ?, ?, ?)",
			c.key, release, at.group, at.constituent, c.some, c.none)
		if err != nil {
			return err
		}
	}
	return nil
}
