package main

import (
	"errors"
	"flag"
	"fmt"
	"log"
	"os"
	"runtime"
	"strings"
	"time"
)

// row is a line of the table: what was timed, and what it is held to.
type row struct {
	name        string
	ours, peer  timing
	beside      string  // who the peer is; empty: none
	mostSeconds float64 // 0: no bound
	mostRatio   float64 // of wall clock and of processor time, both; 0: no bound
	note        string
}

// bench is one run: a program that was built for it, and a folder to work in.
type bench struct {
	runs           int
	shared, dir    string
	program        string
	cpu, mem, only string
}

func main() {
	log.SetFlags(0)
	if len(os.Args) > 1 && os.Args[1] == "release" {
		if err := invent(os.Args[2:]); err != nil {
			log.Fatal(err)
		}
		return
	}
	b := bench{}
	flag.IntVar(&b.runs, "runs", 5, "times that each row is done")
	flag.StringVar(&b.shared, "shared", os.Getenv("SIPSUM_SHARED"), "folder of the published tables")
	flag.StringVar(&b.only, "only", "", "load, ensemble or commands: those rows alone")
	flag.StringVar(&b.cpu, "cpu", "", "write a processor profile of the ensemble")
	flag.StringVar(&b.mem, "mem", "", "write a profile of what the ensemble allocates")
	flag.Parse()
	if err := b.run(); err != nil {
		log.Fatal(err)
	}
}

func (b *bench) run() (err error) {
	if b.dir, err = os.MkdirTemp("", "bench"); err != nil {
		return err
	}
	defer os.RemoveAll(b.dir)
	if err := b.build(); err != nil {
		return err
	}
	fmt.Printf("%s, %s/%s, %d cores, %s, GOGC %s, medians of %d\n\n", time.Now().Format(time.DateOnly), runtime.GOOS, runtime.GOARCH, runtime.NumCPU(),
		runtime.Version(), os.Getenv("GOGC"), b.runs)
	fmt.Println("| what | wall | processor | peer | ratio of wall | of processor | held to |")
	fmt.Println("|---|---|---|---|---|---|---|")
	for _, part := range []struct {
		name string
		do   func() ([]row, error)
	}{{"load", b.load}, {"ensemble", b.ensemble}, {"commands", b.commands}} {
		if b.only != "" && b.only != part.name {
			continue
		}
		rows, err := part.do()
		if missing := (errMissing)(""); errors.As(err, &missing) {
			fmt.Printf("| %s | left out: %s | | | | | |\n", part.name, missing)
			continue
		}
		if err != nil {
			return fmt.Errorf("%s: %w", part.name, err)
		}
		for _, r := range rows {
			fmt.Println(r)
		}
	}
	return nil
}

// errMissing says which program or table of a peer is not there.
type errMissing string

func (e errMissing) Error() string { return string(e) }

// String gives the row as a line of the table.
func (r row) String() string {
	cells := []string{r.name, milliseconds(r.ours.wall), milliseconds(r.ours.cpu), "", "", "", ""}
	ratio := r.ours.cpu / r.peer.cpu
	if r.beside != "" {
		cells[3] = r.beside + " " + milliseconds(r.peer.wall)
		cells[4], cells[5] = fmt.Sprintf("%.2f", r.ours.wall/r.peer.wall), fmt.Sprintf("%.2f", ratio)
	}
	var held []string
	if r.mostSeconds > 0 {
		held = append(held, verdict(r.ours.wall <= r.mostSeconds, "≤ "+milliseconds(r.mostSeconds)))
	}
	if r.mostRatio > 0 {
		held = append(held, verdict(max(ratio, r.ours.wall/r.peer.wall) <= r.mostRatio, fmt.Sprintf("≤ %.2f", r.mostRatio)))
	}
	cells[6] = strings.Join(append(held, r.note), " ")
	return "| " + strings.Join(cells, " | ") + " |"
}

func verdict(kept bool, bound string) string {
	if kept {
		return bound
	}
	return "**missed** " + bound
}

func milliseconds(seconds float64) string { return fmt.Sprintf("%.0f ms", 1000*seconds) }
