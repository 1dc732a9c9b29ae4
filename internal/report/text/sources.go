package textreport

import (
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/evidence"
	"sipsum/internal/source"
)

// footnotes numbers the sources of a page in the order of their first use.
type footnotes struct {
	texts []string
}

// number gives the number of a source text.
func (f *footnotes) number(text string) int {
	i := slices.Index(f.texts, text)
	if i < 0 {
		i = len(f.texts)
		f.texts = append(f.texts, text)
	}
	return i + 1
}

// all gives the signs of source texts.
func (f *footnotes) all(texts []string) string {
	var numbers []int
	for _, text := range texts {
		numbers = append(numbers, f.number(clean.UpperFirst(text)))
	}
	return signs(numbers)
}

// signs writes numbers as " [1,3–5]", sorted; empty if there are none.
func signs(numbers []int) string {
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

// of gives the footnotes of an entry of the evidence: its works, and the tables
// of parts that name no work.
func (f *footnotes) of(e *evidence.Entry, tables []source.Table) string {
	var numbers []int
	for _, w := range e.Works {
		numbers = append(numbers, f.number(citation(w)))
	}
	for _, c := range e.Contributions {
		if c.Mean == 0 || c.Source != "" && len(e.Works) > 0 {
			continue
		}
		for _, t := range tables {
			if t.ID == c.Table {
				numbers = append(numbers, f.number(citationOf(t)))
			}
		}
	}
	return signs(numbers)
}

// gradeWords say how good a source is (data/core/README.md), with its grade.
var gradeWords = map[string]string{
	"A": "Measured several times, or analysed by an agency (A)",
	"B": "One good paper or table (B)",
	"C": "A handbook, or derived (C)",
	"D": "An estimate, or a list without sources (D)",
}

// citation writes a work as a footnote.
func citation(w source.Work) string {
	if w.Note == evidence.OwnSource {
		return sentences(w.ID + ", " + w.Note + ": " + w.Citation)
	}
	return sentences(kinWords(w.Citation), w.URL, gradeWords[w.Grade])
}

// citationOf writes a table as a footnote.
func citationOf(t source.Table) string {
	text := t.Citation
	if text == "" {
		text = strings.TrimSuffix(t.Title+", "+t.Edition, ", ")
	}
	return sentences(text, prefixed("Licence: ", t.Licence))
}

func prefixed(prefix, text string) string {
	if text == "" {
		return ""
	}
	return prefix + text
}

// sentences joins the texts that are there.
func sentences(texts ...string) string {
	var list []string
	for _, t := range texts {
		if t = strings.TrimRight(Clean(t, mostProse), ". "); t != "" {
			list = append(list, t)
		}
	}
	return strings.Join(list, ". ") + "."
}

// sources prints the footnotes that the page has used.
func (p *page) sources(f *footnotes) {
	if len(f.texts) == 0 {
		return
	}
	p.heading("Sources")
	margin := len("[99] ")
	for i, text := range f.texts {
		p.hanging(left("["+strconv.Itoa(i+1)+"]", margin), margin, text)
	}
}
