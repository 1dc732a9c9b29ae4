package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
)

// parts are the rows that both hold, by table: how they are read from the database of sipsum, and the
// plain table that SQLite's command line imports them into.
var parts = []struct{ name, ours, plain string }{
	{"food", `SELECT f.code, f.our_group, f.publisher_group, f.density, f.density_sd, f.edible, f.note FROM food f` + ofSR,
		`CREATE TABLE food (code TEXT PRIMARY KEY, our_group TEXT, publisher_group TEXT, density REAL, density_sd REAL, edible REAL, note TEXT) WITHOUT ROWID;`},
	{"food_name", `SELECT f.code, n.language, n.text FROM food f JOIN food_name n ON n.food = f.key` + ofSR,
		`CREATE TABLE food_name (food TEXT, language TEXT, text TEXT); CREATE INDEX name_text ON food_name (text); CREATE INDEX name_food ON food_name (food);`},
	{"value", `SELECT f.code, v.constituent, v.amount, v.state, v.source, v.ref, v.n, v.sd, v.low, v.high, v.most FROM food f JOIN value v ON v.food = f.key` + ofSR,
		`CREATE TABLE value (food TEXT, constituent TEXT, amount REAL, state TEXT, source TEXT, ref TEXT, n INTEGER, sd REAL, low REAL, high REAL, most REAL, PRIMARY KEY (food, constituent)) WITHOUT ROWID;`},
}

const (
	ofSR = ` JOIN release r ON r.key = f.release WHERE r.current = 1 AND r.table_id = 'sr' ORDER BY 1, 2, 3`
	// settings are those of sipsum (internal/store/open.go, load.go).
	settings = `PRAGMA journal_mode = WAL; PRAGMA synchronous = NORMAL; PRAGMA cache_size = -32768;`
)

// load is `table load sr` beside .import.
func (b *bench) load() ([]row, error) {
	const worth = 0.6
	if _, err := exec.LookPath("sqlite3"); err != nil {
		return nil, errMissing("no sqlite3")
	}
	release := filepath.Join(b.shared, "tables", "sr28")
	if _, err := os.Stat(release); b.shared == "" || err != nil {
		return nil, errMissing("no SR28 in --shared")
	}
	ours := func() (timing, error) {
		if err := b.without("ours.db"); err != nil {
			return timing{}, err
		}
		if _, err := b.sipsum("ours.db", "table", "list"); err != nil { // the core table is none of the rows
			return timing{}, err
		}
		return b.sipsum("ours.db", "table", "load", "sr", release)
	}
	if _, err := ours(); err != nil {
		return nil, err
	}
	imports := settings + "\n"
	for _, p := range parts {
		rows, err := b.query("ours.db", p.ours)
		if err != nil {
			return nil, err
		}
		if err := os.WriteFile(b.at(p.name+".csv"), rows, 0o644); err != nil {
			return nil, err
		}
		imports += p.plain + "\n.mode csv\n.import " + b.at(p.name+".csv") + " " + p.name + "\n"
	}
	plain := func() (timing, error) {
		if err := b.without("plain.db"); err != nil {
			return timing{}, err
		}
		t, _, err := timed(imports, "sqlite3", "-batch", "-bail", b.at("plain.db"))
		return t, err
	}
	medians, err := b.turns(ours, plain)
	if err != nil {
		return nil, err
	}
	rows, err := b.compared()
	return []row{{
		name: "`table load sr`", ours: medians[0], peer: medians[1], beside: "sqlite3 .import", mostRatio: worth,
		note: fmt.Sprintf("(%d rows, the same in both)", rows),
	}}, err
}

// compared holds what both databases have together, row by row, and counts it.
func (b *bench) compared() (int, error) {
	n := 0
	for _, p := range parts {
		ours, err := b.query("ours.db", p.ours)
		if err != nil {
			return 0, err
		}
		plain, err := b.query("plain.db", "SELECT * FROM "+p.name+" ORDER BY 1, 2, 3")
		if err != nil {
			return 0, err
		}
		empty := []byte(`""`) // CSV does not tell an empty text from none
		if !bytes.Equal(bytes.ReplaceAll(ours, empty, nil), bytes.ReplaceAll(plain, empty, nil)) {
			return 0, errors.New("the rows of " + p.name + " differ")
		}
		count, err := b.query("plain.db", "SELECT count(*) FROM "+p.name)
		if err != nil {
			return 0, err
		}
		rows, err := strconv.Atoi(string(bytes.TrimSpace(count)))
		if err != nil {
			return 0, err
		}
		n += rows
	}
	return n, nil
}

func (b *bench) query(db, query string) ([]byte, error) {
	_, out, err := timed("", "sqlite3", "-csv", b.at(db), query)
	return out, err
}
