package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"
)

// held runs a test binary with 8 GiB of address space at most: a loop that no longer ends
// often collects something. The bound is ours, ten times what any test here takes.
const held = `sh -c 'ulimit -v 8388608; exec "$0" "$@"'`

// bench is where mutants are put to the test, one at a time.
type bench struct {
	root, folder string // of the module; of what is changed
	limit        time.Duration
	sound        map[string]bool // packages whose tests pass as they are
}

func newBench(root string, limit time.Duration) (*bench, error) {
	whole, err := filepath.Abs(root)
	if err != nil {
		return nil, err
	}
	folder, err := os.MkdirTemp("", "mutants")
	return &bench{root: whole, folder: folder, limit: limit, sound: map[string]bool{}}, err
}

func (b *bench) close() { os.RemoveAll(b.folder) }

// end is what became of a mutant.
type end struct {
	built  bool
	killer string // the first test that failed; "" if none did
}

func (e end) String() string {
	if e.killer == "" {
		return "SURVIVED"
	}
	return "killed by " + e.killer
}

// try runs the tests of a place's package with the place changed.
func (b *bench) try(ctx context.Context, p place) (end, error) {
	if !b.sound[p.folder] {
		plain, err := b.test(ctx, p.folder)
		if err != nil {
			return end{}, err
		}
		if !plain.built || plain.killer != "" {
			return end{}, fmt.Errorf("%s fails as it is (%s): nothing can be said of its mutants", p.folder, plain.killer)
		}
		b.sound[p.folder] = true
	}
	overlay, err := b.lay(p)
	if err != nil {
		return end{}, err
	}
	return b.test(ctx, p.folder, "-overlay", overlay, "-exec", held)
}

// lay writes the changed file and the overlay that names it.
func (b *bench) lay(p place) (string, error) {
	original := filepath.Join(b.root, p.folder, p.file)
	text, err := os.ReadFile(original)
	if err != nil {
		return "", err
	}
	changed := filepath.Join(b.folder, "changed.go")
	if err := os.WriteFile(changed, p.changed(text), 0o600); err != nil {
		return "", err
	}
	list, err := json.Marshal(map[string]map[string]string{"Replace": {original: changed}})
	if err != nil {
		return "", err
	}
	overlay := filepath.Join(b.folder, "overlay.json")
	return overlay, os.WriteFile(overlay, list, 0o600)
}

// test runs the tests of a package.
func (b *bench) test(ctx context.Context, folder string, flags ...string) (end, error) {
	args := append([]string{"test", "-json", "-failfast", "-vet=off", "-timeout", b.limit.String()}, flags...)
	command := exec.CommandContext(ctx, "go", append(args, "./"+folder)...)
	command.Dir = b.root
	var said, complaint bytes.Buffer
	command.Stdout, command.Stderr = &said, &complaint
	err := command.Run()
	var failed *exec.ExitError
	switch {
	case ctx.Err() != nil:
		return end{}, ctx.Err()
	case err == nil:
		return end{built: true}, nil
	case !errors.As(err, &failed):
		return end{}, err
	}
	e := judge(&said)
	if !e.built && complaint.Len() > 0 && said.Len() == 0 {
		return end{}, fmt.Errorf("go test %s: %s", folder, complaint.String())
	}
	return e, nil
}

// judge reads why the tests of a package failed.
func judge(said *bytes.Buffer) end {
	e := end{built: true, killer: "the end of the test binary"}
	named := false
	for events := json.NewDecoder(said); ; {
		var event struct{ Action, Test, Output, FailedBuild string }
		if events.Decode(&event) != nil {
			return e // all is read
		}
		switch {
		case event.FailedBuild != "" || event.Action == "build-fail":
			return end{}
		case strings.HasPrefix(event.Output, "panic: test timed out"):
			return end{built: true, killer: "the limit of time"}
		case event.Action == "fail" && event.Test != "" && !named:
			e.killer, named = event.Test, true
		}
	}
}
