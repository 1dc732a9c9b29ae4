package store

import (
	"cmp"
	"context"
	"slices"
	"strings"

	"github.com/jmoiron/sqlx"

	"sipsum/internal/food"
)

// labelColumns is the number of parameters of a row of food_label_index.
const labelColumns = 2

// labels indexes what stands on the labels of the foods of a load.
type labels struct {
	rows    *sqlx.Stmt // a full batch
	waiting []any
}

func newLabels(ctx context.Context, tx *sqlx.Tx) (*labels, error) {
	rows, err := tx.PreparexContext(ctx, insertLabels(batch))
	return &labels{rows: rows, waiting: make([]any, 0, batch*labelColumns)}, err
}

func insertLabels(rows int) string {
	return "INSERT OR FAIL INTO food_label_index (rowid, text) VALUES " + rowsOf(labelColumns)(rows)
}

// add queues the label of a food, if it has one.
func (l *labels) add(ctx context.Context, key int64, f *food.Food) error {
	if f.Article == "" && f.Declared == "" {
		return nil
	}
	l.waiting = append(l.waiting, key, f.Article+" "+f.Name()+" "+f.Declared)
	if len(l.waiting) < cap(l.waiting) {
		return nil
	}
	_, err := l.rows.ExecContext(ctx, l.waiting...)
	l.waiting = l.waiting[:0]
	return err
}

// finish writes the labels that still wait.
func (l *labels) finish(ctx context.Context, tx *sqlx.Tx) error {
	if len(l.waiting) == 0 {
		return nil
	}
	_, err := tx.ExecContext(ctx, insertLabels(len(l.waiting)/labelColumns), l.waiting...)
	return err
}

// The digits of a number of an article (GS1 General Specifications: GTIN-8, -12, -13 and -14), and those of the
// longest, to which the others are filled up with zeros in front.
const (
	shortestArticle = 8
	longestArticle  = 14
)

// article gives the number of an article as the index has it; ok is false for other words.
func article(words []string) (number string, ok bool) {
	if len(words) != 1 || !isNumber(words[0]) || len(words[0]) < shortestArticle || len(words[0]) > longestArticle {
		return "", false
	}
	return strings.Repeat("0", longestArticle-len(words[0])) + words[0], true
}

// onLabels finds foods whose labels have all the words, in the order of their tables and there in the publisher's.
func onLabels(ctx context.Context, tx *sqlx.Tx, q Query, words []string) (hits []Hit, err error) {
	expressions := make([]string, len(words))
	for i, word := range words {
		expressions[i] = quoted(word)
	}
	scope := Ranking{Tables: q.Tables, Groups: q.Groups}.scope()
	var foods []run
	err = tx.SelectContext(ctx, &foods, `SELECT table_id, first_food AS "first", last_food AS "last" FROM release WHERE current = 1 ORDER BY table_id`)
	if err != nil {
		return nil, err
	}
	slices.SortStableFunc(foods, func(a, b run) int { return cmp.Compare(q.preference(a.Table), q.preference(b.Table)) })
	for _, of := range foods {
		rows, err := tx.QueryContext(ctx, `
			SELECT r.table_id, f.code, coalesce((SELECT text FROM food_name WHERE food = f.key ORDER BY key LIMIT 1), ''), ''
			FROM food_label_index l CROSS JOIN food f ON f.key = l.rowid CROSS JOIN release r ON r.key = f.release
			WHERE food_label_index MATCH ? AND l.rowid BETWEEN ? AND ? AND `+scope.text+" ORDER BY l.rowid LIMIT ?",
			slices.Concat([]any{strings.Join(expressions, " AND "), of.First, of.Last}, scope.args, []any{q.Limit - len(hits)})...)
		if err != nil {
			return nil, err
		}
		found, err := hitsOf(rows)
		if err != nil {
			return nil, err
		}
		hits = append(hits, found...)
	}
	for i := range hits {
		hits[i].Label = true
	}
	return hits, nil
}
