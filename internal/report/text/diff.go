package textreport

import (
	"fmt"
	"io"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/tables/difference"
)

// Diff prints what changed from one edition of a table to another.
func Diff(w io.Writer, old, new string, added, removed []food.Column, changes []difference.Change, st Style) error {
	p := newPage(st)
	p.title("From "+Clean(old, mostName)+" to "+Clean(new, mostName), "diff")
	count := map[difference.Kind]int{}
	for _, c := range changes {
		count[c.Kind]++
	}
	p.paragraph(0, 0, fmt.Sprintf("%s foods came, %s went, %s changed.",
		grouped(count[difference.Added]), grouped(count[difference.Removed]), grouped(count[difference.Changed])))
	printColumns(p, "columns that came", added)
	printColumns(p, "columns that went", removed)
	for _, c := range changes {
		p.gap()
		switch c.Kind {
		case difference.Added:
			p.hanging("+ ", 2, Clean(c.Code, mostName)+"  "+Clean(c.NewName, mostName))
		case difference.Removed:
			p.hanging("− ", 2, Clean(c.Code, mostName)+"  "+Clean(c.OldName, mostName))
		case difference.Changed:
			name := Clean(c.NewName, mostName)
			if c.Renamed() {
				name += " (was " + Clean(c.OldName, mostName) + ")"
			}
			p.hanging("~ ", 2, Clean(c.Code, mostName)+"  "+name)
		}
		for _, v := range c.Values {
			name, unit := string(v.Constituent), ""
			if k, ok := constituent.Find(name); ok {
				name, unit = k.Name, " "+k.Unit
			}
			p.hanging("    ", 6, Clean(name, mostName)+": "+side(v.Old)+" → "+side(v.New)+unit)
		}
	}
	return p.write(w)
}

func printColumns(p *page, what string, list []food.Column) {
	for i, c := range list {
		if i == 0 {
			p.gap()
			p.line(what + ":")
		}
		p.hanging("    ", 6, Clean(string(c.ID), mostName)+"  "+Clean(c.Name, mostName))
	}
}

// side is a value of one edition; none where it has none.
func side(v *food.Value) string {
	if v == nil {
		return "none"
	}
	return printed(*v)
}
