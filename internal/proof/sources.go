package proof

import "sipsum/internal/source"

// SourcesDiffer names what a pack tells of tables and of works otherwise than tables that are at hand: no figure hangs on
// who is said to have measured it, so no calculation would show it. Of a release that is not at hand nothing is said.
func (in *Inputs) SourcesDiffer(tables []source.Table, works func(table, id string) (source.Work, bool)) []string {
	same := map[string]bool{} // tables that are at hand in the release of the pack
	var list []string
	for _, told := range in.Tables {
		for _, t := range tables {
			if t.ID != told.ID || t.Hash != told.Hash {
				continue
			}
			same[t.ID] = true
			if Table(t) != told {
				list = append(list, "what is said of the table "+told.ID+", its title, publisher, licence or citation, is not what the table says of itself")
			}
		}
	}
	for _, w := range in.Works {
		if !same[w.Table] {
			continue
		}
		if of, ok := works(w.Table, w.ID); !ok || (Work{w.Table, of.ID, of.Citation, of.URL, of.Licence, of.Grade, of.Note}) != w {
			list = append(list, "the source "+w.ID+" of the table "+w.Table+" is not the one that the table names")
		}
	}
	return list
}
