package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"time"
)

// timing is how long something took, in seconds.
type timing struct{ wall, cpu float64 }

// median of each of the two by itself.
func median(list []timing) timing {
	of := func(x func(timing) float64) float64 {
		var all []float64
		for _, t := range list {
			all = append(all, x(t))
		}
		slices.Sort(all)
		return all[len(all)/2]
	}
	return timing{of(func(t timing) float64 { return t.wall }), of(func(t timing) float64 { return t.cpu })}
}

// turns does some things by turns and gives the median of each.
func (b *bench) turns(each ...func() (timing, error)) ([]timing, error) {
	all := make([][]timing, len(each))
	for range b.runs {
		for i, do := range each {
			t, err := do()
			if err != nil {
				return nil, err
			}
			all[i] = append(all[i], t)
		}
	}
	medians := make([]timing, len(each))
	for i := range all {
		medians[i] = median(all[i])
	}
	return medians, nil
}

// timed runs a program with a text as its input, and gives what it printed.
func timed(in string, name string, args ...string) (timing, []byte, error) {
	c := exec.Command(name, args...)
	var out, errs bytes.Buffer
	c.Stdout, c.Stderr = &out, &errs
	if in != "" {
		c.Stdin = bytes.NewBufferString(in)
	}
	start := time.Now()
	err := c.Run()
	t := timing{wall: time.Since(start).Seconds()}
	if c.ProcessState != nil {
		t.cpu = (c.ProcessState.UserTime() + c.ProcessState.SystemTime()).Seconds()
	}
	if err != nil {
		err = fmt.Errorf("%s %v: %w\n%s", name, args, err, errs.Bytes())
	}
	return t, out.Bytes(), err
}

func (b *bench) build() error {
	b.program = filepath.Join(b.dir, "sipsum")
	_, _, err := timed("", "go", "build", "-o", b.program, "./cmd/sipsum")
	return err
}

// at is a file of the working folder.
func (b *bench) at(name string) string { return filepath.Join(b.dir, name) }

// findings is the exit code of what is done, with findings that need a decision.
const findings = 3

// sipsum runs the program with a database of the working folder. Findings are no failure.
func (b *bench) sipsum(db string, args ...string) (timing, error) {
	t, _, err := timed("", b.program, append(args, "--db", b.at(db))...)
	if exit := (*exec.ExitError)(nil); errors.As(err, &exit) && exit.ExitCode() == findings {
		err = nil
	}
	return t, err
}

// without removes a database of the working folder.
func (b *bench) without(db string) error {
	for _, end := range []string{"", "-wal", "-shm"} {
		if err := os.Remove(b.at(db + end)); err != nil && !os.IsNotExist(err) {
			return err
		}
	}
	return nil
}
