package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"strings"

	"github.com/jmoiron/sqlx"

	"sipsum/internal/fail"
	"sipsum/internal/food"
)

// Food gives everything that a table says about one food. A code of digits may
// leave out leading zeros, or add some: sr:9160 is sr:09160; another may be in any case. The
// food comes with the code as published.
func (db *DB) Food(ctx context.Context, id food.ID) (*food.Food, error) {
	foods, err := db.Foods(ctx, []food.ID{id})
	if err != nil {
		return nil, err
	}
	return foods[0], nil
}

// Foods gives the foods in the order of their ids, all from one state of the
// database. The error names every food that does not exist and every table
// that is not loaded.
func (db *DB) Foods(ctx context.Context, ids []food.ID) ([]*food.Food, error) {
	const doing = "cannot read the foods of"
	found := make([]*food.Food, len(ids))
	var missing []food.ID
	var noTable []error
	prepared, err := db.reader(ctx)
	if err != nil {
		return nil, db.explain(ctx, err, doing)
	}
	err = db.read(ctx, func(tx *sqlx.Tx) error {
		r := prepared.in(ctx, tx)
		for i, id := range ids {
			key, err := r.key(ctx, tx, id)
			switch {
			case fail.ExitCode(err) == fail.NeedsTable:
				noTable = append(noTable, err)
			case err != nil:
				return err
			case key == 0:
				missing = append(missing, id)
			default:
				if found[i], err = r.food(ctx, key, id.Table); err != nil {
					return err
				}
			}
		}
		return nil
	})
	if err != nil {
		return nil, db.explain(ctx, err, doing)
	}
	if len(missing)+len(noTable) > 0 {
		return nil, db.notFound(ctx, missing, noTable)
	}
	return found, nil
}

// longestCode bounds the zeros that are tried in front of a code of digits.
const longestCode = 12

// key gives the key of a food, 0 if there is none. If no code is the same, codes
// are compared without leading zeros, or without regard to case; a code that two
// foods share in this way is not found.
func (r *reader) key(ctx context.Context, tx *sqlx.Tx, id food.ID) (int64, error) {
	var key int64
	err := r.exact.GetContext(ctx, &key, id.Table, id.Code)
	if !errors.Is(err, sql.ErrNoRows) {
		return key, err
	}
	release, err := currentOf(ctx, tx, id.Table)
	if err != nil {
		return 0, err
	}
	if !isDigits(id.Code) {
		return theOne(ctx, tx, "SELECT key FROM food WHERE release = ? AND code = ? COLLATE NOCASE", release, id.Code)
	}
	var codes []string
	bare := strings.TrimLeft(id.Code, "0")
	for width := max(len(bare), 1); width <= longestCode; width++ {
		codes = append(codes, strings.Repeat("0", width-len(bare))+bare)
	}
	text, args, err := sqlx.In("SELECT key FROM food WHERE release = ? AND code IN (?)", release, codes)
	if err != nil {
		return 0, err
	}
	return theOne(ctx, tx, text, args...)
}

// theOne gives the only key that a query finds, 0 if there is none or more than one.
func theOne(ctx context.Context, tx *sqlx.Tx, text string, args ...any) (int64, error) {
	var hits []int64
	if err := tx.SelectContext(ctx, &hits, text, args...); err != nil || len(hits) != 1 {
		return 0, err
	}
	return hits[0], nil
}

func isDigits(s string) bool {
	return s != "" && strings.Trim(s, "0123456789") == ""
}

// ByName gives the one food that is called so in the first of the tables that has one: by exactly
// this name, in any language, else by its name or its code in any case. Two such foods in one table
// are an error. A number alone is no food: it is the code of a different one in every table.
func (db *DB) ByName(ctx context.Context, name string, tables []string) (food.ID, bool, error) {
	if len(tables) == 0 {
		return food.ID{}, false, nil
	}
	id, found, err := db.called(ctx, name, tables, `
		SELECT DISTINCT r.table_id AS "table", f.code
		FROM called c CROSS JOIN food_name n ON n.key = c.name CROSS JOIN food f ON f.key = n.food CROSS JOIN release r ON r.key = f.release
		WHERE c.text = ? AND n.text = ? AND r.current = 1 AND r.table_id IN (?) ORDER BY f.key`, name, name, tables)
	if found || err != nil || isDigits(name) {
		return id, found, err
	}
	return db.called(ctx, name, tables, `
		SELECT r.table_id AS "table", f.code FROM release r CROSS JOIN food f ON f.release = r.key
		WHERE r.current = 1 AND r.table_id IN (?) AND (f.code = ? COLLATE NOCASE
			OR f.key IN (SELECT n.food FROM called c CROSS JOIN food_name n ON n.key = c.name WHERE c.text = ?)) ORDER BY f.key`, tables, name, name)
}

// called gives the one food that a query finds in the first table that has any.
func (db *DB) called(ctx context.Context, name string, tables []string, query string, args ...any) (food.ID, bool, error) {
	const doing = "cannot look up a name in"
	query, args, err := sqlx.In(query, args...)
	if err != nil {
		return food.ID{}, false, db.explain(ctx, err, doing)
	}
	var hits []food.ID
	if err := db.handle.SelectContext(ctx, &hits, query, args...); err != nil {
		return food.ID{}, false, db.explain(ctx, err, doing)
	}
	for _, table := range tables {
		var same []string
		var id food.ID
		for _, h := range hits {
			if h.Table == table {
				id = h
				same = append(same, h.String())
			}
		}
		switch len(same) {
		case 0:
			continue
		case 1:
			return id, true, nil
		}
		return food.ID{}, false, fail.New(fail.Wrong, fmt.Sprintf("%q is the name of %d foods", name, len(same)), "write one of "+strings.Join(same, ", "))
	}
	return food.ID{}, false, nil
}
