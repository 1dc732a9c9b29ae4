package main

import (
	"bytes"
	"context"
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"
)

func main() {
	srPath := flag.String("sr", "", "folder with the files of USDA SR28")
	dataPath := flag.String("data", "data", "the project's data folder")
	check := flag.Bool("check", false, "compare with values.csv and write nothing")
	flag.Parse()
	if err := run(*srPath, *dataPath, *check); err != nil {
		fmt.Fprintln(os.Stderr, "rebuildcore:", err)
		os.Exit(1)
	}
}

func run(srPath, dataPath string, check bool) error {
	if srPath == "" {
		return errors.New("give the folder of USDA SR28 with --sr PATH")
	}
	core := filepath.Join(dataPath, "core")
	picks, err := readPicks(core)
	if err != nil {
		return err
	}
	table, err := readSR(context.Background(), srPath, picks)
	if err != nil {
		return err
	}
	rows, err := build(picks, table)
	if err != nil {
		return err
	}
	made, err := encode(rows)
	if err != nil {
		return err
	}
	target := filepath.Join(core, "values.csv")
	if !check {
		fmt.Printf("%d foods, %d values\n", len(picks.foods), len(rows))
		return os.WriteFile(target, made, 0o644)
	}
	kept, err := os.ReadFile(target)
	if err != nil {
		return err
	}
	if line := firstDifference(kept, made); line > 0 {
		return fmt.Errorf("%s differs from what its sources give, first at line %d: run without --check", target, line)
	}
	fmt.Printf("%d values agree\n", len(rows))
	return nil
}

// firstDifference gives the first line that differs, or 0.
func firstDifference(a, b []byte) int {
	if bytes.Equal(a, b) {
		return 0
	}
	la, lb := bytes.Split(a, []byte("\n")), bytes.Split(b, []byte("\n"))
	for i := range min(len(la), len(lb)) {
		if !bytes.Equal(la[i], lb[i]) {
			return i + 1
		}
	}
	return min(len(la), len(lb)) + 1
}
