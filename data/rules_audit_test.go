package data_test

import (
	"io/fs"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/data"
	"sipsum/internal/constituent"
	"sipsum/internal/phrase"
)

func TestBoundRulesAreSourced(t *testing.T) {
	groups := byKey(t, "groups.csv", "group")
	for _, b := range rows(t, "bounds.csv") {
		at := b["group"] + " " + b["constituents"]
		if b["group"] != "*" {
			assert.Contains(t, groups, b["group"], at)
		}
		assert.NotEmpty(t, b["source"], at)
		tags := strings.Fields(b["constituents"])
		require.NotEmpty(t, tags, at)
		for _, tag := range tags {
			_, ok := constituent.Find(tag)
			assert.True(t, ok, "%s: %s", at, tag)
		}
		switch b["rule"] {
		case "zero":
			assert.Zero(t, number(t, b, "amount"), at)
		case "factor":
			assert.Greater(t, number(t, b, "amount"), 0.0, at)
			_, ok := constituent.Find(b["of"])
			assert.True(t, ok, "%s: of %q", at, b["of"])
		case "rest":
			assert.Empty(t, b["amount"], at)
			assert.Len(t, tags, 1, at)
			c, _ := constituent.Find(tags[0])
			assert.Equal(t, string(c.Parent), b["of"], at)
		case "below":
			assert.Greater(t, number(t, b, "amount"), 0.0, at)
			assert.NotEmpty(t, b["words"], "%s: a whole group has a max", at)
		case "max", "allowed":
			assert.Greater(t, number(t, b, "amount"), 0.0, at)
			assert.Len(t, tags, 1, at)
		default:
			t.Errorf("%s: rule %q is not known", at, b["rule"])
		}
	}
}

// A rule that something does not occur in a group must not be contradicted by
// a core food of that group.
func TestZeroRulesAgreeWithTheCoreTable(t *testing.T) {
	const negligible = 0.15 // g/100 g of a sugar, what the rules' sources print for a few foods
	foods, all := byKey(t, "core/foods.csv", "code"), coreContents(t)
	for _, b := range rows(t, "bounds.csv") {
		if b["rule"] != "zero" {
			continue
		}
		for tag := range strings.FieldsSeq(b["constituents"]) {
			c := constituent.Must(constituent.ID(tag))
			allowed := 0.0
			if c.Parent == constituent.Sugar {
				allowed = negligible
			}
			for code, f := range foods {
				if speaks(b, f) && f["use"] != "chemical" && !strings.Contains(tag, "-other") {
					assert.LessOrEqual(t, all[code].published(c), allowed, "%s in %s: %s", tag, code, b["source"])
				}
			}
		}
	}
}

// speaks reports whether a rule of bounds.csv speaks of a core food, by its group and its name.
func speaks(b, f row) bool {
	words := phrase.Words(f["name"])
	named := func(column string) bool { return phrase.Read(b[column]).In(words) }
	return (b["group"] == "*" || b["group"] == f["group"]) && (b["words"] == "" || named("words")) && !named("unless")
}

// What a core food is known to be treated or flavoured with is not assumed to be missing: of a
// food that is sold with sulphites, quinine, liquorice or aspartame the amount is known or
// unknown.
func TestZeroRulesLeaveWhatIsMarked(t *testing.T) {
	of := map[string]string{"sulphites": "SO2", "quinine": "quinine", "liquorice": "glycyrrhizin", "phenylalanine": "ASPM"}
	foods, seen := byKey(t, "core/foods.csv", "code"), map[string]int{}
	for _, m := range rows(t, "core/marks.csv") {
		id, ok := of[m["value"]]
		if !ok {
			continue
		}
		seen[id]++
		for _, b := range rows(t, "bounds.csv") {
			if b["rule"] == "zero" && slices.Contains(strings.Fields(b["constituents"]), id) {
				assert.False(t, speaks(b, foods[m["code"]]) && foods[m["code"]]["use"] != "chemical", "%s of %s: %s", id, m["code"], b["source"])
			}
		}
	}
	assert.Len(t, seen, len(of))
}

// Nor may the most published in a group, or of a kind of food, be less than what a core food
// of it holds.
func TestMaxRulesAgreeWithTheCoreTable(t *testing.T) {
	foods, all := byKey(t, "core/foods.csv", "code"), coreContents(t)
	for _, b := range rows(t, "bounds.csv") {
		if b["rule"] != "max" && b["rule"] != "below" {
			continue
		}
		const rounding = 1.001
		for tag := range strings.FieldsSeq(b["constituents"]) {
			c := constituent.Must(constituent.ID(tag))
			for code, f := range foods {
				if speaks(b, f) && f["use"] != "chemical" {
					assert.LessOrEqual(t, all[code][c.ID]*c.PerGram, number(t, b, "amount")*rounding, "%s of %s", c.ID, code)
				}
			}
		}
	}
}

// published is a constituent's amount, leaving out what is only below a limit.
func (c contents) published(of *constituent.Constituent) float64 {
	const limits = 0.06 // g: half of the widest limit printed for an acid, and of a last place
	total := c.total(of.ID)
	if total <= limits {
		return 0
	}
	return total
}

// A concentrate is a juice, and names the dry matter of that juice as a core food of one holds it.
func TestConcentrates(t *testing.T) {
	groups, foods := byKey(t, "groups.csv", "group"), byKey(t, "core/foods.csv", "code")
	named := map[string]bool{}
	for _, r := range rows(t, "concentrates.csv") {
		assert.Equal(t, "yes", groups[r["group"]]["juice"], r["words"])
		assert.NotEmpty(t, r["source"], r["words"])
		for _, f := range foods {
			if f["sr"] != "" && strings.Contains(r["source"], f["sr"]) {
				water := coreContents(t)[f["code"]]["WATER"]
				assert.InDelta(t, 100*(1-water/100), number(t, r, "solids"), 0.01, f["code"])
				named[r["words"]] = true
			}
		}
		assert.True(t, named[r["words"]], r["words"])
	}
}

func TestGroupRules(t *testing.T) {
	groups := byKey(t, "groups.csv", "group")
	last := map[string]row{}
	for _, r := range byKey(t, "group_rules.csv", "id") {
		assert.Contains(t, groups, r["group"], r["id"])
		_, err := fs.Stat(data.FS, "maps/"+r["table"]+".csv")
		assert.NoError(t, err, "%s: no format %s", r["id"], r["table"])
		assert.NotEmpty(t, r["source"], r["id"])
	}
	for _, r := range rows(t, "group_rules.csv") {
		last[r["table"]] = r
	}
	for table, r := range last {
		assert.Empty(t, r["publisher_group"]+r["name_words"]+r["not_words"], "%s: the last rule takes what is left", table)
		assert.Equal(t, "other", r["group"], table)
	}
	for _, g := range groups {
		assert.Contains(t, []string{"liquid", "solid", "either"}, g["state"], g["group"])
		assert.Contains(t, []string{"", "coffee", "tea"}, g["brew"], g["group"])
		assert.Contains(t, []string{"", "yes"}, g["juice"], g["group"])
		assert.Equal(t, strings.HasSuffix(g["group"], " juice"), g["juice"] == "yes", g["group"])
		assert.Equal(t, g["brew"] != "", (g["dose"] == "yes") != (g["infused"] == "yes"), "%s: what is brewed is a dose or an infusion", g["group"])
		for _, fact := range []string{"assumed", "takes_up_acid", "water", "of_animals", "curdles", "dose", "infused", "in_drinks", "alcoholic"} {
			assert.Contains(t, []string{"", "yes"}, g[fact], "%s: %s", g["group"], fact)
		}
	}
}

func TestAtomicWeightsAreSourced(t *testing.T) {
	for element, w := range byKey(t, "atomic_weights.csv", "element") {
		assert.Greater(t, number(t, w, "weight"), 1.0, element)
		assert.Greater(t, number(t, w, "uncertainty"), 0.0, element)
		assert.Equal(t, "g/mol", w["unit"], element)
		assert.NotEmpty(t, w["source"], element)
	}
}
