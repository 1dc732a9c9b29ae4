package cli

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"sipsum/internal/across"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/report/json"
	"sipsum/internal/report/text"
	"sipsum/internal/sheet"
)

// across prints a drink by the tables of several agencies.
func (a drinks) across(ctx context.Context, arg string, tables []string) error {
	tables, err := a.agencies(ctx, tables)
	if err != nil {
		return err
	}
	found, err := a.found(ctx, arg)
	if err != nil {
		return err
	}
	lib, err := a.library(ctx)
	if err != nil {
		return err
	}
	ens := estimate.Ensemble{Seed: a.options.seed, N: a.options.draws + 1}
	all, err := across.Run(ctx, found, lib, tables, ens, sheet.ComparedFigures(found.Drink, found.Drink))
	if err != nil {
		return err
	}
	if a.json() {
		return jsonreport.Across(a.streams.Out, program, all)
	}
	return textreport.Leaf(a.streams.Out, sheet.AcrossLeaf(program, all), a.style())
}

// agencies checks the tables of --across: known to the crosswalk, and loaded.
func (a drinks) agencies(ctx context.Context, asked []string) ([]string, error) {
	var list, absent []string
	lib, err := a.library(ctx)
	if err != nil {
		return nil, err
	}
	for _, id := range asked {
		id = strings.ToLower(strings.TrimSpace(id))
		switch {
		case !slices.Contains(across.Tables(), id):
			return nil, fail.New(fail.Wrong, fmt.Sprintf("nobody has judged which foods of %q are those of the drink", id), "use some of: "+strings.Join(across.Tables(), ", "))
		case slices.Contains(list, id):
			continue
		}
		_, loaded, err := lib.db.Table(ctx, id)
		if err != nil {
			return nil, err
		}
		if list = append(list, id); !loaded {
			absent = append(absent, id)
		}
	}
	if len(absent) > 0 {
		var load []string
		for _, id := range absent {
			load = append(load, "sipsum table load "+id+" PATH")
		}
		return nil, fail.New(fail.NeedsTable, "not loaded: "+strings.Join(absent, ", "), "load what is missing: "+strings.Join(load, "; ")+" (sipsum table formats says where each is found), or leave it out")
	}
	return list, nil
}
