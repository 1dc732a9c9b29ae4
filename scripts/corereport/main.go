// Corereport prints what the embedded core table knows and what it does not:
//
//	go run ./scripts/corereport
//
// # Model
//
// A constituent of a food counts as known where the table states an amount, a
// trace or a value below a limit; an assumed zero counts, an unknown with a bound
// does not. The foods that miss are printed by name, with the bound where there
// is one.
//
// # Limits
//
// It reads the values as kept, before zeros and bounds by food group
// (data/bounds.csv) are applied.
package main

import (
	"context"
	"fmt"
	"io"
	"os"

	"sipsum/internal/food"
	"sipsum/internal/tables/core"
)

func main() {
	foods, err := coreFoods(context.Background())
	if err == nil {
		err = write(os.Stdout, foods)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "corereport:", err)
		os.Exit(1)
	}
}

func coreFoods(ctx context.Context) ([]*food.Food, error) {
	release, err := core.Format.Open(ctx, "", "")
	if err != nil {
		return nil, err
	}
	var foods []*food.Food
	for f, err := range release.Foods {
		if err != nil {
			return nil, err
		}
		foods = append(foods, f)
	}
	return foods, nil
}

func write(w io.Writer, foods []*food.Food) error {
	if _, err := fmt.Fprintf(w, "%d foods\n", len(foods)); err != nil {
		return err
	}
	for _, g := range byGroup(foods) {
		if _, err := fmt.Fprintf(w, "  %-16s %3d\n", g.name, g.count); err != nil {
			return err
		}
	}
	for _, l := range lines {
		if err := l.measure(foods).write(w); err != nil {
			return err
		}
	}
	return nil
}
