package store

import (
	"context"

	"github.com/jmoiron/sqlx"

	"sipsum/internal/food"
)

// nameColumns is the number of parameters of a row of food_name.
const nameColumns = 4

// names writes the names of the foods of a load.
type names struct {
	first, next int64
	rows        *sqlx.Stmt // a full batch
	waiting     []any      // parameters of the rows not yet written
	words       *vocabulary
}

func newNames(ctx context.Context, tx *sqlx.Tx) (*names, error) {
	n := &names{waiting: make([]any, 0, batch*nameColumns), words: newVocabulary()}
	if err := tx.GetContext(ctx, &n.next, "SELECT coalesce(max(key), 0) + 1 FROM food_name"); err != nil {
		return nil, err
	}
	n.first = n.next
	rows, err := tx.PreparexContext(ctx, insertNames(batch))
	n.rows = rows
	return n, err
}

// insertNames gives the statement for so many names. OR FAIL: a load that fails is rolled back whole, so
// SQLite need not be ready to undo one statement of it.
func insertNames(rows int) string {
	return "INSERT OR FAIL INTO food_name (key, food, language, text) VALUES " + rowsOf(nameColumns)(rows)
}

// add queues the names of a food.
func (n *names) add(ctx context.Context, key int64, of []food.Name) error {
	for _, name := range of {
		n.waiting = append(n.waiting, n.next, key, name.Language, name.Text)
		n.next++
		n.words.add(name.Text)
		if len(n.waiting) < cap(n.waiting) {
			continue
		}
		if _, err := n.rows.ExecContext(ctx, n.waiting...); err != nil {
			return err
		}
		n.waiting = n.waiting[:0]
	}
	return nil
}

// finish writes the names that still wait and the words of all, and indexes them.
func (n *names) finish(ctx context.Context, tx *sqlx.Tx, release int64) error {
	if len(n.waiting) > 0 {
		if _, err := tx.ExecContext(ctx, insertNames(len(n.waiting)/nameColumns), n.waiting...); err != nil {
			return err
		}
	}
	if err := n.words.insert(ctx, tx, release); err != nil {
		return err
	}
	_, err := tx.ExecContext(ctx, "INSERT INTO called (text, name) SELECT text, key FROM food_name WHERE key >= ? ORDER BY text COLLATE NOCASE, key", n.first)
	if err != nil {
		return err
	}
	_, err = tx.ExecContext(ctx, "INSERT INTO food_name_index (rowid, text) SELECT key, text FROM food_name WHERE key >= ?", n.first)
	return err
}
