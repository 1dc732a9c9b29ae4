package claims

import (
	"fmt"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/food"
)

// tableOfSamples is the table whose published figures stand one by one in data/samples.csv.
const tableOfSamples = "core"

// samples are the single figures that are published of a food, by its code and the constituent, in its unit per
// 100 g.
var samples = sync.OnceValue(func() map[[2]string][]float64 {
	list := map[[2]string][]float64{}
	for _, row := range embedded.Rows("samples.csv") {
		key := [2]string{row.Text("code"), string(constituent.Must(constituent.ID(row.Text("constituent"))).ID)}
		list[key] = append(list[key], row.Number("printed")*row.Number("factor"))
	}
	return list
})

// sampled says how many of the published figures of a food lie beyond one, on the side away from what it is
// taken to be; empty where they are not kept one by one.
func sampled(f *food.Food, tag string, is, to float64) string {
	if f == nil || f.ID.Table != tableOfSamples {
		return ""
	}
	list := samples()[[2]string{f.ID.Code, tag}]
	if len(list) == 0 {
		return ""
	}
	beyond := 0
	for _, x := range list {
		if to < is && x < to || to > is && x > to {
			beyond++
		}
	}
	verb := "are"
	switch beyond {
	case 0:
		return fmt.Sprintf("none of %d published figures is", len(list))
	case 1:
		verb = "is"
	}
	return fmt.Sprintf("%d of %d published figures %s", beyond, len(list), verb)
}
