package main

import (
	"fmt"
	"io"
	"math/rand/v2"
	"strconv"
	"strings"
)

// What a release is made of. All of it is invented but the ids of nutrients.
const (
	firstID    = 3_000_000
	splitEvery = 20
	manyEvery  = 100 // one food of so many is an analysed one
	many       = 90
	window     = 64 // foods are shuffled among as many neighbours
)

var (
	tastes  = []string{"sour", "sweet", "bitter", "roasted", "smoked", "mild", "dark", "golden", "wild", "plain", "salted", "spiced"}
	things  = []string{"oat drink", "cherry syrup", "lemon juice", "coffee", "cocoa", "tea", "honey", "milk", "orange juice", "apple juice", "biscuit", "nut bar", "soup", "cider vinegar", "plum jam"}
	makers  = []string{"north", "south", "east", "west", "hill", "river", "harbour", "garden", "mill", "meadow"}
	common  = []int{1003, 1004, 1005, 1008, 2000, 1258, 1093, 1079, 1253, 1257, 1087, 1089, 1092, 1162, 1104, 1110, 1235}
	decimal = []string{"0", "0.0", "1.5", "12.77", "3.57", "250", "7.14", "0.36", "46.43", "83"}
)

// release says how many values each food has.
type release struct {
	count, total int
	ids          []int // of nutrients
}

func newRelease(foods, values int) *release {
	r := &release{count: foods, total: values, ids: append([]int{}, common...)}
	for id := 1001; len(r.ids) < 400; id++ {
		if !contains(common, id) {
			r.ids = append(r.ids, id)
		}
	}
	return r
}

func contains(list []int, x int) bool {
	for _, y := range list {
		if x == y {
			return true
		}
	}
	return false
}

// sizes calls use with the number of values of each food; they add up to the
// total.
func (r *release) sizes(use func(food, n int) error) error {
	left := r.total
	for food := range r.count {
		foodsLeft := r.count - food
		n := left / foodsLeft
		if food%manyEvery == 0 && left-many > foodsLeft {
			n = many
		}
		n = min(n, len(r.ids))
		left -= n
		if err := use(food, n); err != nil {
			return err
		}
	}
	if left > 0 {
		return fmt.Errorf("%d values do not fit: a food has at most %d", left, len(r.ids))
	}
	return nil
}

func (r *release) nutrients(w io.Writer) error {
	fmt.Fprintln(w, `"id","name","unit_name","nutrient_nbr","rank"`)
	for _, id := range r.ids {
		unit := "MG"
		switch id {
		case 1008:
			unit = "KCAL"
		case 1062:
			unit = "kJ"
		case 1023:
			unit = "PH"
		case 1104, 1110, 1124:
			unit = "IU"
		case 1003, 1004, 1005, 2000, 1258, 1079, 1257, 1235:
			unit = "G"
		}
		if _, err := fmt.Fprintf(w, "\"%d\",\"Invented nutrient %d\",\"%s\",\"\",\"%d\"\n", id, id, unit, id); err != nil {
			return err
		}
	}
	return nil
}

func (r *release) foods(w io.Writer) error {
	fmt.Fprintln(w, "fdc_id,data_type,description,food_category_id,publication_date")
	random := rand.New(rand.NewPCG(1, 1))
	for food := range r.count {
		kind := "branded_food"
		if food%manyEvery == 0 {
			kind = "sr_legacy_food"
		}
		_, err := fmt.Fprintf(w, "%d,%s,\"%s\",%d,2030-%02d-01\n", firstID+food, kind, described(random, food), 1+food%25, 1+food%12)
		if err != nil {
			return err
		}
	}
	return nil
}

func described(random *rand.Rand, food int) string {
	pick := func(list []string) string { return list[random.IntN(len(list))] }
	return fmt.Sprintf("%s, %s, %s %d", strings.ToUpper(pick(things)), pick(tastes), pick(makers), food)
}

// values writes food_nutrient.csv: foods shuffled among their neighbours, those
// that are split with their second part some thousand foods later.
func (r *release) values(w io.Writer) error {
	io.WriteString(w, "id,fdc_id,nutrient_id,amount,data_points,derivation_id,min,max,median,loq,footnote,min_year_acquired\n")
	v := &valueWriter{w: w, random: rand.New(rand.NewPCG(2, 2)), release: r}
	var near []part
	err := r.sizes(func(food, n int) error {
		near = append(near, part{food: food, n: n})
		if len(near) < window {
			return nil
		}
		err := v.some(near)
		near = near[:0]
		return err
	})
	if err == nil {
		err = v.some(near)
	}
	if err == nil {
		err = v.later(0)
	}
	return err
}

// part is a food, or the values of one from a place on.
type part struct{ food, from, n int }

type valueWriter struct {
	w       io.Writer
	random  *rand.Rand
	release *release
	row     int
	line    []byte
	split   []part
}

// some writes neighbours, and the second parts that have waited long enough.
func (v *valueWriter) some(near []part) error {
	v.random.Shuffle(len(near), func(i, j int) { near[i], near[j] = near[j], near[i] })
	for _, p := range near {
		if p.food%splitEvery == 7 && p.n > 1 {
			v.split = append(v.split, part{food: p.food, from: p.n / 2, n: p.n})
			p.n /= 2
		}
		if err := v.write(p); err != nil {
			return err
		}
	}
	return v.later(100)
}

// later writes second parts until so many still wait.
func (v *valueWriter) later(waiting int) error {
	for len(v.split) > waiting {
		if err := v.write(v.split[0]); err != nil {
			return err
		}
		v.split = v.split[1:]
	}
	return nil
}

// write writes values from…n of a food. The order of its nutrients is its own.
func (v *valueWriter) write(p part) error {
	all := v.release.ids
	step := 1 + p.food%7*2 // odd
	for step%5 == 0 {      // 400 = 2·2·2·2·5·5
		step += 2
	}
	span := len(common)
	if p.n > span {
		span = len(all)
	} else if step%span == 0 {
		step = 1
	}
	for i := p.from; i < p.n; i++ {
		v.row++
		at := (p.food + i*step) % span
		b := strconv.AppendInt(v.line[:0], int64(v.row), 10)
		b = append(b, ',')
		b = strconv.AppendInt(b, int64(firstID+p.food), 10)
		b = append(b, ',')
		b = strconv.AppendInt(b, int64(all[at]), 10)
		b = append(b, ',')
		b = append(b, decimal[v.random.IntN(len(decimal))]...)
		if p.food%manyEvery == 0 {
			b = append(b, ",4,1,0.1,99.5,,,,2029\n"...)
		} else {
			b = append(b, ",,70,,,,,,\n"...)
		}
		v.line = b
		if _, err := v.w.Write(b); err != nil {
			return err
		}
	}
	return nil
}

func (r *release) labels(w io.Writer) error {
	fmt.Fprintln(w, "fdc_id,brand_owner,brand_name,gtin_upc,ingredients,serving_size,serving_size_unit,household_serving_fulltext,branded_food_category,market_country")
	random := rand.New(rand.NewPCG(3, 3))
	pick := func(list []string) string { return list[random.IntN(len(list))] }
	for food := range r.count {
		if food%manyEvery == 0 {
			continue
		}
		var ingredients []string
		for range 4 + random.IntN(12) {
			ingredients = append(ingredients, strings.ToUpper(pick(tastes)+" "+pick(things)))
		}
		_, err := fmt.Fprintf(w, "%d,Invented %s Ltd.,%s,%d,\"%s.\",30.0,g,1 piece,%s,United States\n",
			firstID+food, pick(makers), pick(makers), 10_000_000_000+food, strings.Join(ingredients, ", "), pick(things))
		if err != nil {
			return err
		}
	}
	return nil
}

func categories(w io.Writer) error {
	fmt.Fprintln(w, "id,code,description")
	for i := range 25 {
		fmt.Fprintf(w, "%d,%02d00,Invented category %d\n", i+1, i+1, i+1)
	}
	return nil
}

func derivations(w io.Writer) error {
	_, err := io.WriteString(w, "id,code,description,source_id\n1,A,Analytical,1\n70,LX,From a label,2\n")
	return err
}

func sources(w io.Writer) error {
	_, err := io.WriteString(w, "id,code,description\n1,1,Analytical\n2,8,Calculated from a label\n")
	return err
}
