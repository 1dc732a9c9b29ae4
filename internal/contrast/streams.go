package contrast

import (
	"cmp"
	"context"
	"regexp"
	"slices"
	"strconv"

	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/estimate"
	"sipsum/internal/recipe"
)

// Written tells what a drink has written, by path: of a run at central values.
func Written(ctx context.Context, r *recipe.Recipe) (amount.Written, error) {
	p, heard := assay.Prepare(r, estimate.Ensemble{N: 1}), amount.Written{}
	p.Hear(heard)
	_, err := p.Run(ctx, nil, assay.Want{})
	return heard, err
}

// twin is what the path of the second line or step of a name has more than that of the first.
var twin = regexp.MustCompile(`~\d+(/|$)`)

// Streams names the streams of what is written in two drinks: what stands in both as it is has one
// stream, what was changed has others. What stands in one alone keeps the stream of its path.
func Streams(a, b amount.Written) (ofA, ofB amount.Streams) {
	ofA, ofB = amount.Streams{}, amount.Streams{}
	inA, inB := byPlace(a), byPlace(b)
	for place, pathsA := range inA {
		pathsB := inB[place]
		same := slices.Equal(pathsA, pathsB) && slices.EqualFunc(pathsA, pathsB, func(x, y string) bool { return a[x] == b[y] })
		if len(pathsB) == 0 || same {
			continue
		}
		byWriting(ofA, place, pathsA, a)
		byWriting(ofB, place, pathsB, b)
	}
	return ofA, ofB
}

// byPlace gathers the paths of one pot and food, in the order of the file.
func byPlace(all amount.Written) map[string][]string {
	places := map[string][]string{}
	for path := range all {
		place := twin.ReplaceAllString(path, "$1")
		places[place] = append(places[place], path)
	}
	for _, paths := range places {
		slices.SortFunc(paths, func(x, y string) int { // ~2 before ~10
			return cmp.Or(cmp.Compare(len(x), len(y)), cmp.Compare(x, y))
		})
	}
	return places
}

// byWriting names streams by what is written, the second of the same by its number.
func byWriting(names amount.Streams, place string, paths []string, all amount.Written) {
	times := map[string]int{}
	for _, path := range paths {
		text := all[path]
		times[text]++
		names[path] = place + " " + text
		if n := times[text]; n > 1 {
			names[path] += " " + strconv.Itoa(n)
		}
	}
}
