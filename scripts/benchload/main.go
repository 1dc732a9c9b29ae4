package main

import (
	"bufio"
	"flag"
	"fmt"
	"io"
	"log"
	"os"
	"path/filepath"
)

func main() {
	foods := flag.Int("foods", 20_000, "number of foods")
	values := flag.Int("values", 250_000, "number of values")
	out := flag.String("out", "", "folder to write to")
	labels := flag.Bool("labels", true, "write branded_food.csv with texts of ingredients")
	flag.Parse()
	log.SetFlags(0)
	if *out == "" || *foods < 1 || *values < *foods {
		log.Fatal("-out is needed, and at least one value for each food")
	}
	if err := os.MkdirAll(*out, 0o755); err != nil {
		log.Fatal(err)
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
			log.Fatal(err)
		}
	}
	fmt.Printf("%d foods, %d values in %s\n", *foods, *values, *out)
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
