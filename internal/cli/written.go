package cli

import (
	"context"
	"path/filepath"

	"sipsum/internal/proof"
	"sipsum/internal/recipe"
)

// written is the texts that a drink was read from: its file first, then its shelves.
type written []proof.File

// keeping keeps the text of a drink file, and each shelf that is opened.
func (w *written) keeping(name string, text []byte, open func(string) ([]byte, error)) func(string) ([]byte, error) {
	*w = written{{Name: filepath.Base(name), Text: string(text)}}
	if open == nil {
		return nil
	}
	return func(path string) ([]byte, error) {
		text, err := open(path)
		if err == nil {
			*w = append(*w, proof.File{Name: path, Text: string(text)})
		}
		return text, err
	}
}

// inputs are what a drink was calculated from.
func (a drinks) inputs(ctx context.Context, files written, found *recipe.Recipe) (proof.Inputs, error) {
	lib, err := a.library(ctx)
	if err != nil {
		return proof.Inputs{}, err
	}
	tables, err := loadedTables(ctx, lib.db)
	if err != nil {
		return proof.Inputs{}, err
	}
	in := proof.Inputs{Drink: found.Drink.Name, Files: files, Seed: a.options.seed, Draws: a.options.draws}
	in.Gather(proof.Used{Rows: found.Rows, Tables: tables, Works: lib.works(ctx)})
	return in, nil
}

// short is the digest that a card of a drink bears.
func (a drinks) short(files written, found *recipe.Recipe) string {
	in := proof.Inputs{Files: files, Seed: a.options.seed, Draws: a.options.draws}
	in.Gather(proof.Used{Rows: found.Rows})
	return in.Short(program)
}
