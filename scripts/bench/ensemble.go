package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os/exec"
	"strconv"
	"strings"
)

// python is Debian's, which has Debian's numpy.
const python = "/usr/bin/python3"

// large is a result of BenchmarkLarge: seconds, and how much work it was.
type large struct {
	timing
	work map[string]float64 // by unit: cells, figures, shares …
}

// ensemble is sixty foods at 1,000 draws, beside the same work in numpy.
func (b *bench) ensemble() ([]row, error) {
	held := map[string]float64{"figures": 0.060, "chemistry": 0.110}
	const worth = 0.3
	found, err := b.large()
	if err != nil {
		return nil, err
	}
	var rows []row
	for _, name := range []string{"figures", "chemistry"} {
		rows = append(rows, row{name: "60 foods × 1,000 draws, " + name, ours: found[name].timing, mostSeconds: held[name]})
	}
	shares := row{name: "the same with every share", ours: found["shares"].timing, beside: "numpy", mostRatio: worth}
	if shares.peer, err = b.numpy(found["shares"].work); err == nil {
		rows = append(rows, shares)
	}
	return rows, err
}

// large runs the benchmark, and reads the median of each of its parts.
func (b *bench) large() (map[string]large, error) {
	args := []string{"test", "-run", "^$", "-bench", "^BenchmarkLarge$/(figures|chemistry|shares)", "-benchtime", "5x", "-count", strconv.Itoa(b.runs)}
	if b.cpu != "" {
		args = append(args, "-cpuprofile", b.cpu)
	}
	if b.mem != "" {
		args = append(args, "-memprofile", b.mem)
	}
	_, out, err := timed("", "go", append(args, "-o", b.at("large.test"), "./internal/assay")...)
	if err != nil {
		return nil, err
	}
	all, work := map[string][]timing{}, map[string]map[string]float64{}
	for line := range strings.Lines(string(out)) {
		_, rest, is := strings.Cut(line, "BenchmarkLarge/")
		fields := strings.Fields(rest)
		if !is || len(fields) < 4 {
			continue
		}
		name, _, _ := strings.Cut(fields[0], "-")
		of := map[string]float64{}
		for i := 2; i+1 < len(fields); i += 2 {
			x, err := strconv.ParseFloat(fields[i], 64)
			if err != nil {
				return nil, err
			}
			of[fields[i+1]] = x
		}
		const nano = 1e-9
		all[name] = append(all[name], timing{wall: nano * of["ns/op"], cpu: nano * of["cpu-ns/op"]})
		work[name] = of
	}
	found := map[string]large{}
	for name, list := range all {
		found[name] = large{median(list), work[name]}
	}
	return found, nil
}

// numpy times ensemble.py at as much work.
func (b *bench) numpy(work map[string]float64) (timing, error) {
	if exec.Command(python, "-c", "import numpy").Run() != nil {
		return timing{}, errMissing("no numpy in " + python)
	}
	args := []string{"scripts/bench/ensemble.py", "--runs", strconv.Itoa(b.runs)}
	for _, unit := range []string{"foods", "parts", "cells", "figures", "shares"} {
		args = append(args, "--"+unit, fmt.Sprintf("%.0f", work[unit]))
	}
	_, out, err := timed("", python, args...)
	if err != nil {
		return timing{}, err
	}
	var list []timing
	for line := range bytes.Lines(out) {
		var t [2]float64
		if err := json.Unmarshal(line, &t); err != nil {
			return timing{}, err
		}
		list = append(list, timing{t[0], t[1]})
	}
	return median(list), nil
}
