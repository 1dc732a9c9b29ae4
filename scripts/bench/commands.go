package main

// commands are whole processes.
func (b *bench) commands() ([]row, error) {
	first := func() (timing, error) {
		if err := b.without("first.db"); err != nil {
			return timing{}, err
		}
		return b.sipsum("first.db", "assay", "demo")
	}
	again := func(args ...string) func() (timing, error) {
		return func() (timing, error) { return b.sipsum("first.db", args...) }
	}
	names := []string{"`assay demo`, first ever", "`assay demo`", "`food find` hit", "`food find` near", "`food rank`"}
	medians, err := b.turns(first, again("assay", "demo"), again("food", "find", "lemon juice"), again("food", "find", "lemmon jiuce"), again("food", "rank", "CITAC"))
	if err != nil {
		return nil, err
	}
	var rows []row
	for i, m := range medians {
		rows = append(rows, row{name: names[i], ours: m})
	}
	const demo = 0.050
	rows[1].mostSeconds = demo
	return rows, nil
}
