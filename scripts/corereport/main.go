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
	for _, a := range []asking{acidsLead, quinic} {
		if err := a.measure(foods).write(w); err != nil {
			return err
		}
	}
	return nil
}
