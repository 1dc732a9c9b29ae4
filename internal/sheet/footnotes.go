package sheet

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/evidence"
	"sipsum/internal/source"
)

// Footnotes numbers the sources of a page in the order of their first use.
type Footnotes struct {
	Texts []string
}

// Number gives the number of a source text.
func (f *Footnotes) Number(text string) int {
	i := slices.Index(f.Texts, text)
	if i < 0 {
		i = len(f.Texts)
		f.Texts = append(f.Texts, text)
	}
	return i + 1
}

// All gives the signs of source texts.
func (f *Footnotes) All(texts []string) string {
	var numbers []int
	for _, text := range texts {
		numbers = append(numbers, f.Number(clean.UpperFirst(text)))
	}
	return Numbered(numbers)
}

// Numbered writes numbers as " [1,3–5]", sorted; empty if there are none.
func Numbered(numbers []int) string {
	if len(numbers) == 0 {
		return ""
	}
	sorted := slices.Clone(numbers)
	slices.Sort(sorted)
	sorted = slices.Compact(sorted)
	var texts []string
	for i := 0; i < len(sorted); {
		end := i
		for end+1 < len(sorted) && sorted[end+1] == sorted[end]+1 {
			end++
		}
		text, next := strconv.Itoa(sorted[i]), i+1
		if end > i+1 {
			text, next = text+"–"+strconv.Itoa(sorted[end]), end+1
		}
		texts = append(texts, text)
		i = next
	}
	return " [" + strings.Join(texts, ",") + "]"
}

// Of gives the footnotes of an entry of the evidence: its works, and the tables
// of parts that name no work.
func (f *Footnotes) Of(e *evidence.Entry, tables []source.Table) string {
	var numbers []int
	for _, w := range e.Works {
		numbers = append(numbers, f.Number(Citation(w)))
	}
	for _, c := range e.Contributions {
		if c.Mean == 0 || c.Source != "" && len(e.Works) > 0 {
			continue
		}
		for _, t := range tables {
			if t.ID == c.Table {
				numbers = append(numbers, f.Number(CitationOf(t)))
			}
		}
	}
	return Numbered(numbers)
}

// gradeWords say how good a source is (data/core/README.md), with its grade.
var gradeWords = map[string]string{
	"A": "Measured several times, or analysed by an agency (A)",
	"B": "One good paper or table (B)",
	"C": "A handbook, or derived (C)",
	"D": "An estimate, or a list without sources (D)",
}

// Citation writes a work as a footnote.
func Citation(w source.Work) string {
	if w.Note == evidence.OwnSource {
		return Sentences(w.ID + ", " + w.Note + ": " + w.Citation)
	}
	return Sentences(KinWords(w.Citation), w.URL, gradeWords[w.Grade])
}

// CitationOf writes a table as a footnote.
func CitationOf(t source.Table) string {
	text := t.Citation
	if text == "" {
		text = strings.TrimSuffix(t.Title+", "+t.Edition, ", ")
	}
	return Sentences(text, prefixed("Licence: ", t.Licence))
}

func prefixed(prefix, text string) string {
	if text == "" {
		return ""
	}
	return prefix + text
}

// Sentences joins the texts that are there.
func Sentences(texts ...string) string {
	var list []string
	for _, t := range texts {
		if t = strings.TrimRight(clean.Prose(t), ". "); t != "" {
			list = append(list, t)
		}
	}
	return strings.Join(list, ". ") + "."
}

// codes are the rows of tables that a kin's shares come from.
var codes = regexp.MustCompile(`as in ((?:\S+:\S+ )+)\(`)

// KinRows gives the codes of the foods whose shares a figure by kin has.
func KinRows(source string) string {
	if found := codes.FindStringSubmatch(clean.Prose(source)); found != nil {
		return strings.TrimSpace(found[1])
	}
	return ""
}

// KinWords says whose shares a figure by kin has: how many published foods, and where they
// stand, without their codes.
func KinWords(source string) string {
	return codes.ReplaceAllStringFunc(clean.Prose(source), func(rows string) string {
		n := strings.Count(rows, ":")
		if n == 1 {
			return "as in one published food ("
		}
		return "as in " + strconv.Itoa(n) + " published foods ("
	})
}
