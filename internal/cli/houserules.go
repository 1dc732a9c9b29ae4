package cli

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/houserules"
)

// houseRulesFile is the file of house rules that is read beside a drink unasked.
const houseRulesFile = "house-rules.yaml"

// houseRules reads the rules that a drink is held to: those of --house-rules, else those that lie in the
// folder of its file, and then the page says so. Nil: there are none. What is wrong with them joins the
// faults of the drink.
func (a drinks) houseRules(arg string, ask asked, faults *fail.List) (*drink.HouseRules, error) {
	path := ask.houseFile
	if path == "" && ask.house {
		path = besideDrink(arg)
	}
	if path == "" {
		return nil, nil
	}
	if info, err := os.Stat(path); err == nil && !info.IsDir() && !info.Mode().IsRegular() && ask.houseFile == "" {
		return nil, fail.New(fail.Wrong, path+" is not a file but a pipe or a device", "write the rules into a file of that name, or take it away")
	}
	text, err := a.readAll(path, mostText, "check the name of the file of house rules")
	if err != nil {
		return nil, err
	}
	h, wrong := drink.ParseHouseRules(path, text)
	houserules.Check(h, wrong)
	faults.Take(wrong)
	return h, nil
}

// besideDrink names the house rules in the folder of a drink file; empty if there are none, or no file.
func besideDrink(arg string) string {
	file, err := drinkNamed(arg)
	if _, demo := demoName(arg); demo || err != nil || file == "-" {
		return ""
	}
	path := filepath.Join(filepath.Dir(file), houseRulesFile)
	if _, err := os.Lstat(path); errors.Is(err, fs.ErrNotExist) {
		return ""
	}
	return path // what is no file, or nobody may read, is told when it is opened
}
