package main

import (
	"bufio"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
)

// invent writes an invented release.
func invent(args []string) error {
	flags := flag.NewFlagSet("release", flag.ContinueOnError)
	foods := flags.Int("foods", 20_000, "number of foods")
	values := flags.Int("values", 250_000, "number of values")
	out := flags.String("out", "", "folder to write to")
	labels := flags.Bool("labels", true, "write branded_food.csv with texts of ingredients")
	if err := flags.Parse(args); err != nil {
		return err
	}
	if *out == "" || *foods < 1 || *values < *foods {
		return errors.New("-out is needed, and at least one value for each food")
	}
	if err := os.MkdirAll(*out, 0o755); err != nil {
		return err
	}
	r := newRelease(*foods, *values)
	for name, write := range map[string]func(io.Writer) error{
		"nutrient.csv": r.nutrients, "food.csv": r.foods, "food_nutrient.csv": r.values, "branded_food.csv": r.labels,
		"food_category.csv": categories, "food_nutrient_derivation.csv": derivations, "food_nutrient_source.csv": sources,
	} {
		if name == "branded_food.csv" && !*labels {
			continue
		}
		if err := toFile(filepath.Join(*out, name), write); err != nil {
			return err
		}
	}
	fmt.Printf("%d foods, %d values in %s\n", *foods, *values, *out)
	return nil
}

func toFile(path string, write func(io.Writer) error) error {
	file, err := os.Create(path)
	if err != nil {
		return err
	}
	defer file.Close()
	w := bufio.NewWriterSize(file, 1<<20)
	if err := write(w); err != nil {
		return err
	}
	if err := w.Flush(); err != nil {
		return err
	}
	return file.Close()
}
