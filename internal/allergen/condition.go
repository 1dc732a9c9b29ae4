package allergen

import (
	"slices"
	"strings"

	"sipsum/internal/embedded"
	"sipsum/internal/phrase"
)

// anyTable is the table of a row that holds whatever the table.
const anyTable = "*"

// condition says of which foods a row of a table of rules speaks: by table, group and the
// words of a name.
type condition struct {
	table           string
	groups          []string    // of ours; empty = any
	apart           []string    // of ours: not these
	publisherGroups []string    // empty = any
	names           phrase.List // one of them; empty = any name
	and             phrase.List // and one of these; empty = no more is asked
	ignore          phrase.List // taken out of the name first
	not             phrase.List // none of them
}

// conditionOf reads a condition. A table of rules has the columns that it needs.
func conditionOf(row embedded.Row) condition {
	text := func(column string) string {
		if !slices.Contains(row.Columns(), column) {
			return ""
		}
		return row.Text(column)
	}
	c := condition{
		table: text("table"), publisherGroups: list(text("publisher_group")),
		names: phrase.Read(text("name_words")), and: phrase.Read(text("and_words")), ignore: phrase.Read(text("ignore")), not: phrase.Read(text("not_words")),
	}
	if c.table == "" {
		c.table = anyTable
	}
	if apart, other := strings.CutPrefix(text("group"), "not "); other {
		c.apart = list(apart)
	} else {
		c.groups = list(text("group"))
	}
	return c
}

// holds reports whether the row speaks of the food under this name.
func (c *condition) holds(it Item, words []string) bool {
	switch {
	case c.table != anyTable && c.table != it.Food.Table,
		c.groups != nil && !slices.Contains(c.groups, it.Group),
		slices.Contains(c.apart, it.Group),
		c.publisherGroups != nil && !slices.Contains(c.publisherGroups, it.PublisherGroup),
		c.names != nil && !c.names.In(words), // most rows end here, before what is long
		c.and != nil && !c.and.In(words),
		c.not.In(words):
		return false
	}
	return c.names == nil || c.names.In(c.ignore.Without(words))
}

// of reports whether the row speaks of the food under any of its names.
func (c *condition) of(it Item, names [][]string) bool {
	return slices.ContainsFunc(names, func(words []string) bool { return c.holds(it, words) })
}
