package ciqual

import (
	"io"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/tables/table"
)

// reader is what the streams of foods need.
type reader struct {
	files   *folder
	tableID string
	rules   *table.Groups
	columns *columns
	twice   map[string]bool // codes that the publisher is known to print twice

	available, polyol constituent.ID
}

func (r *reader) prepare() {
	r.rules = table.GroupsOf(name)
	r.columns = readColumns()
	r.available = r.columns.all[r.columns.byNumber[carbohydrate]].ID(r.tableID)
	r.polyol = r.columns.all[r.columns.byNumber[polyols]].ID(r.tableID)
	r.twice = map[string]bool{}
	for _, row := range embedded.Rows("maps/ciqual_duplicates.csv") {
		r.twice[row.Text("code")] = true
	}
}

// about is what the publisher says of a food besides its values.
type about struct {
	code, french, index, english, latin string
	groups                              [3]string // codes, from the widest
	groupNames                          [3]string
}

// nowhere are the texts that stand for no group and no species.
var nowhere = map[string]bool{"": true, "-": true, "(Genus and species unknown)": true}

// food makes a food without values.
func (r *reader) food(a about) *food.Food {
	f := table.NewFood(r.tableID, a.code)
	for _, n := range []food.Name{{Language: "en", Text: a.english}, {Language: "fr", Text: a.french}, {Language: "fr", Text: a.index}, {Language: "la", Text: a.latin}} {
		if !nowhere[n.Text] && !(n.Text == a.french && len(f.Names) > 0 && f.Names[len(f.Names)-1].Text == a.french) {
			f.Names = append(f.Names, n)
		}
	}
	deepest := ""
	var path []string
	for i, code := range a.groups {
		if strings.Trim(code, "0") != "" {
			deepest = code
		}
		if !nowhere[a.groupNames[i]] {
			path = append(path, a.groupNames[i])
		}
	}
	if f.PublisherGroup = strings.Join(path, " / "); f.PublisherGroup == "" {
		f.PublisherGroup = deepest
	}
	f.Group = r.rules.Group(deepest, a.french)
	return f
}

// codeOf gives a code of digits; a spreadsheet may have added ".0".
func codeOf(cell string) (code string, ok bool) {
	code = strings.TrimSuffix(cell, ".0")
	return code, digits(code)
}

// englishNames reads alim*.xml: code to French and English name.
func (r *reader) englishNames() (map[string][2]string, error) {
	names := map[string][2]string{}
	if r.files.foods == "" {
		return names, nil
	}
	err := r.each(r.files.foods, "alim", func(in *records) error {
		code, ok := codeOf(in.text("alim_code"))
		if !ok {
			return in.wrong("alim_code", "this is not a code of digits")
		}
		names[code] = [2]string{in.text("alim_nom_fr"), in.text("alim_nom_eng")}
		return nil
	})
	return names, err
}

// each reads the records of an XML file.
func (r *reader) each(file, element string, take func(*records) error) error {
	in, err := openRecords(r.files.text, r.files.dir, file, element)
	if err != nil {
		return err
	}
	defer in.close()
	n := 0
	for {
		switch err := in.next(); {
		case err == io.EOF && n == 0:
			return fail.At(fail.Wrong, fail.Place{File: in.name}, "holds no record", again)
		case err == io.EOF:
			return nil
		case err != nil:
			return err
		}
		if err := take(in); err != nil {
			return err
		}
		n++
	}
}
