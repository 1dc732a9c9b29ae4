package main

import (
	"context"
	"flag"
	"fmt"
	"io"
	"os"
	"os/signal"
	"slices"
	"strconv"
	"strings"
	"time"
)

// order is what is asked for.
type order struct {
	root     string // the folder of go.mod
	packages []string
	seed     uint64
	count    int
	only     []int // numbers in the row of the seed; none: the first that build
	limit    time.Duration
}

func main() {
	seed := flag.Uint64("seed", 1, "shuffles the places")
	count := flag.Int("count", 40, "number of mutants")
	packages := flag.String("packages", "", "folders of packages, parted by commas (default: the domain packages)")
	only := flag.String("only", "", "numbers of mutants of an earlier run with this seed, parted by commas")
	limit := flag.Duration("limit", 5*time.Minute, "time that the tests of a package may take")
	flag.Parse()
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	o := order{root: ".", seed: *seed, count: *count, limit: *limit}
	if err := o.read(*packages, *only); err != nil {
		fail(err)
	}
	if err := o.run(ctx, os.Stdout); err != nil {
		fail(err)
	}
}

func fail(err error) {
	fmt.Fprintln(os.Stderr, "mutants:", err)
	os.Exit(1)
}

// read takes the lists.
func (o *order) read(packages, only string) error {
	if packages == "" {
		var err error
		if o.packages, err = domain(o.root); err != nil {
			return err
		}
	} else {
		o.packages = strings.Split(packages, ",")
	}
	if only == "" {
		return nil
	}
	for number := range strings.SplitSeq(only, ",") {
		n, err := strconv.Atoi(number)
		if err != nil {
			return fmt.Errorf("--only wants numbers: %w", err)
		}
		o.only = append(o.only, n)
	}
	return nil
}

// run draws mutants, puts each to the test and tells.
func (o order) run(ctx context.Context, w io.Writer) error {
	var all []place
	for _, p := range o.packages {
		places, err := placesOf(o.root, p)
		if err != nil {
			return err
		}
		all = append(all, places...)
	}
	fmt.Fprintf(w, "%d places in %d packages, seed %d\n", len(all), len(o.packages), o.seed)
	bench, err := newBench(o.root, o.limit)
	if err != nil {
		return err
	}
	defer bench.close()
	var done tally
	for i, p := range shuffled(all, o.seed) {
		number := i + 1
		if len(o.only) > 0 && !slices.Contains(o.only, number) {
			continue
		}
		if len(o.only) == 0 && done.mutants() == o.count {
			break
		}
		end, err := bench.try(ctx, p)
		if err != nil {
			return err
		}
		if !end.built {
			continue
		}
		done.add(p, end)
		fmt.Fprintf(w, "%4d  %s: %s\n", number, p, end)
	}
	return done.write(w)
}
