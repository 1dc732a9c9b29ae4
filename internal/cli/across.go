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
	"sipsum/internal/store"
)

// across prints a drink by the tables of several agencies.
func (a drinks) across(ctx context.Context, arg string, tables []string) error {
	asked, err := a.agencies(ctx, tables)
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
	all, err := across.Run(ctx, found, lib, asked, ens, sheet.ComparedFigures(found.Drink, found.Drink))
	if err != nil {
		return err
	}
	if a.json() {
		return jsonreport.Across(a.streams.Out, program, all)
	}
	return textreport.Leaf(a.streams.Out, sheet.AcrossLeaf(program, all), a.style())
}

// agencies finds the tables of --across: loaded, under whatever name, and of a format that the crosswalk knows.
func (a drinks) agencies(ctx context.Context, asked []string) ([]across.Asked, error) {
	lib, err := a.library(ctx)
	if err != nil {
		return nil, err
	}
	loaded, err := lib.db.Tables(ctx)
	if err != nil {
		return nil, err
	}
	var list []across.Asked
	var absent []string
	for _, id := range asked {
		id = strings.ToLower(strings.TrimSpace(id))
		at := slices.IndexFunc(loaded, func(t store.Info) bool { return t.ID == id })
		if at < 0 {
			if err := unloaded(id, loaded); err != nil {
				return nil, err
			}
			absent = append(absent, id)
			continue
		}
		t := across.Asked{ID: id, Format: loaded[at].Format, Edition: loaded[at].Edition}
		if !slices.Contains(across.Tables(), t.Format) {
			return nil, unjudged(id, t.Format)
		}
		if !slices.Contains(list, t) {
			list = append(list, t)
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

// unloaded says what is wrong with a name under which nothing is loaded; nil if it is a table to be loaded.
func unloaded(id string, loaded []store.Info) error {
	for _, t := range loaded {
		if t.Format == id {
			return fail.New(fail.Wrong, fmt.Sprintf("no table is called %q", id), "a table of that format is loaded as "+t.ID+": write that")
		}
	}
	if slices.Contains(across.Tables(), id) {
		return nil
	}
	return unjudged(id, id)
}

// unjudged says why no drink is taken through a table.
func unjudged(id, format string) error {
	why := across.WhyNot(format)
	if why == "" {
		why = "nobody has judged which of its foods are those of the drink"
	}
	return fail.New(fail.Wrong, fmt.Sprintf("--across cannot take %q: %s", id, why), "use some of: "+strings.Join(across.Tables(), ", "))
}
