package food

import (
	"strings"
	"sync"

	"sipsum/internal/embedded"
)

type synonym struct{ word, also string }

var synonyms = sync.OnceValue(func() []synonym {
	var list []synonym
	for _, row := range embedded.Rows("synonyms.csv") {
		list = append(list, synonym{row.Text("word"), row.Text("also")})
	}
	return list
})

// OtherWords gives what the trade may call the same thing: the query with each
// synonym of data/synonyms.csv put in, in the order of the file. Words are
// compared without case.
func OtherWords(query string) []string {
	words := strings.Join(strings.Fields(strings.ToLower(query)), " ")
	var others []string
	for _, s := range synonyms() {
		if changed := strings.ReplaceAll(" "+words+" ", " "+s.word+" ", " "+s.also+" "); strings.TrimSpace(changed) != words {
			others = append(others, strings.TrimSpace(changed))
		}
	}
	return others
}
