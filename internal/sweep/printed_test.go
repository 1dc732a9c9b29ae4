package sweep_test

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"sipsum/internal/food"
)

// printedLaws are of what a reader sees: pages of text and JSON documents.
var printedLaws = []law{
	{"no slip of a printer", "no NaN, Inf, %!, nil or <nil> on a page", "a page is read by people", noSlipOfAPrinter},
	{"page is 80 wide", "no line of a page is wider than the page", "README", pageIs80Wide},
	{"a brief is a screen", "a brief has 22 lines of 24, with every allergen and the unknown that matters most, and counts what it leaves out", "README", aBriefIsAScreen},
	{"no amount below zero on a page", "no amount with a unit of mass, volume, energy or % has a minus sign", "amounts are positive", noAmountBelowZeroOnAPage},
	{"up to above the interval", "where “up to” stands, it is not below the interval's end", "design §5 (5)", upToAboveTheInterval},
	{"share on a page", "a share on a page is at most 100 %", "a share is of a total", shareOnAPage},
	{"a food can be looked up", "what a document calls core:… is a food of the table", "a code that nobody can look up says nothing", aFoodCanBeLookedUp},
	{"no empty name", "no name in a document is empty", "design §9", noEmptyName},
	{"numbers of a document", "mean, low and high are numbers together; 0 ≤ low ≤ mean ≤ high", "design §9", numbersOfADocument},
	{"unknown is not zero", "what may be there is never printed as 0", "design §2", unknownIsNotZero},
	{"up_to above high", "up_to is at least high, and with_bounds", "design §5 (5)", upToAboveHigh},
	{"up_to below the serving", "what could be of a part of the mass is no more than the serving", "design §5 (5)", upToBelowTheServing},
	{"up_to below the parent's", "a part could be no more than its parent could be", "design §5 (5)", upToBelowTheParents},
	{"share in a document", "0 ≤ share_low ≤ share ≤ share_high ≤ 1", "a share is of a total", shareInADocument},
	{"component once", "no component is listed twice", "names are of a drink's parts", componentOnce},
	{"contribution once", "the same part, food and path is listed once for a constituent", "names are of a drink's parts", contributionOnce},
	{"withheld in a document", "a figure of the chemistry that is null says why, and its bounds are in order", "design §9", withheldInADocument},
	{"withheld rests on nothing", "a document whose pH is null names no food on which it rests", "one pot cannot say both", withheldRestsOnNothing},
	{"one word on the pH", "no pot says “no pH” and what its pH rests on", "one pot cannot say both", oneWordOnThePH},
	{"density of a liquid", "a liquid is denser than ethanol and lighter than the thickest syrup; nothing is lighter than foam or heavier than salt", "limits.csv", densityOfALiquid},
	{"°Brix of liquids", "°Brix is of liquids, between 0 and where the scale ends", "design §5 (7)", brixOfLiquids},
	{"card in order", "on a card no part is above its total, no figure negative", "Regulation (EU) No 1169/2011, Annex XV; 21 CFR 101.9", cardInOrder},
	{"card energy", "kJ and kcal of a card are of one energy", "Regulation (EU) No 1169/2011, Annex XIV", cardEnergy},
	{"an allergen appears", "every allergen of every food that the file pours is printed, at any depth and through any step", "design §2, knowledge of marks", allergenAppears},
	{"an ingredient is listed", "every food that the file pours is in the list of ingredients, the most first", "Regulation (EU) No 1169/2011, Article 18(1)", ingredientListed},
	{"caution above a limit", "what may be above the limit of a caution has the caution", "design §5 (10)", cautionAboveALimit},
}

var slips = regexp.MustCompile(`\bNaN\b|[+−-]Inf\b|%!|<nil>|0x[0-9a-f]{8}|\{\{`)

// lines calls f for every line of figures of every page: before the notes, which speak of
// differences, and the sources, which quote others.
func (s *subject) lines(f func(view, line string)) {
	for _, view := range order(s.pages) {
		page, _, _ := strings.Cut(s.pages[view], "\nSources\n")
		page, _, _ = strings.Cut(page, "\nNotes\n")
		for line := range strings.SplitSeq(page, "\n") {
			f(view, line)
		}
	}
}

func noSlipOfAPrinter(s *subject, broken say) {
	for _, view := range order(s.pages) {
		for line := range strings.SplitSeq(s.pages[view], "\n") {
			if slips.MatchString(line) {
				broken(1, "%s: %s", view, line)
			}
		}
	}
}

// columns counts the columns of a line on a terminal: signs of China, Japan and Korea take two.
func columns(line string) int {
	n := utf8.RuneCountInString(line)
	for _, r := range line {
		if unicode.In(r, unicode.Han, unicode.Hiragana, unicode.Katakana, unicode.Hangul) {
			n++
		}
	}
	return n
}

func pageIs80Wide(s *subject, broken say) {
	for _, view := range order(s.pages) {
		for line := range strings.SplitSeq(s.pages[view], "\n") {
			if n := columns(line); n > int(limit("small page")) {
				broken(float64(n), "%s: %d columns: %s", view, n, line)
			}
		}
	}
}

var (
	belowZero = regexp.MustCompile(`(^|[ (])[−-]\d[\d.,]*(–[\d.,]+)? ?(g|mg|µg|ml|kJ|kcal|%|g/l|g/ml|mg/l|°Bx)\b`)
	upTo      = regexp.MustCompile(`([\d.]+)–([\d.]+)[);]?\s+(?:\()?up to ([\d.]+)`)
	shares    = regexp.MustCompile(`([\d.]+) % \(([\d.]+)–([\d.]+)\)`)
)

func noAmountBelowZeroOnAPage(s *subject, broken say) {
	s.lines(func(view, line string) {
		if belowZero.MatchString(line) {
			broken(1, "%s: %s", view, line)
		}
	})
}

func upToAboveTheInterval(s *subject, broken say) {
	s.lines(func(view, line string) {
		for _, m := range upTo.FindAllStringSubmatch(line, -1) {
			high, _ := strconv.ParseFloat(m[2], 64)
			most, _ := strconv.ParseFloat(m[3], 64)
			if most < high {
				broken(high/most-1, "%s: %s", view, line)
			}
		}
	})
}

func shareOnAPage(s *subject, broken say) {
	s.lines(func(view, line string) {
		if strings.Contains(line, "overrun") { // of the liquid, and a foam may be several times that
			return
		}
		for _, m := range shares.FindAllStringSubmatch(line, -1) {
			for _, text := range m[1:] {
				if x, _ := strconv.ParseFloat(text, 64); x > 100 {
					broken(x, "%s: %s", view, line)
				}
			}
		}
	})
}

// each walks a document and calls f for every object with its path.
func each(path string, x any, f func(path string, object map[string]any)) {
	switch x := x.(type) {
	case map[string]any:
		f(path, x)
		for _, key := range order(x) {
			each(path+"."+key, x[key], f)
		}
	case []any:
		for i, item := range x {
			each(fmt.Sprintf("%s[%d]", path, i), item, f)
		}
	}
}

// placed is an object of a document at its path.
type placed struct {
	path   string
	object map[string]any
}

// objects calls f for every object of every document. Documents are walked once for all laws.
func (s *subject) objects(f func(path string, object map[string]any)) {
	if s.placed == nil {
		for _, view := range order(s.documents) {
			each(view, s.documents[view], func(path string, object map[string]any) {
				s.placed = append(s.placed, placed{path, object})
			})
		}
	}
	for _, o := range s.placed {
		f(o.path, o.object)
	}
}

// number reads a figure of an object; ok is false if it is null or not there.
func number(object map[string]any, key string) (x float64, ok bool) {
	x, ok = object[key].(float64)
	return x, ok
}

func noEmptyName(s *subject, broken say) {
	s.objects(func(path string, object map[string]any) {
		for _, key := range []string{"name", "food", "component", "label", "schema", "unit", "citation", "code", "what", "text", "acid"} {
			if text, is := object[key].(string); is && strings.TrimSpace(text) == "" {
				broken(1, "%s: %s is empty", path, key)
			}
		}
	})
}

func aFoodCanBeLookedUp(s *subject, broken say) {
	look := func(path string, x any) {
		text, _ := x.(string)
		if code, is := strings.CutPrefix(text, "core:"); is && s.kitchen.foods[food.ID{Table: "core", Code: code}] == nil {
			broken(1, "%s: nobody can look up %s", path, text)
		}
	}
	s.objects(func(path string, object map[string]any) {
		for _, key := range order(object) {
			look(path+"."+key, object[key])
			list, _ := object[key].([]any)
			for _, x := range list {
				look(path+"."+key, x)
			}
		}
	})
}

func numbersOfADocument(s *subject, broken say) {
	s.objects(func(path string, object map[string]any) {
		mean, known := number(object, "mean")
		low, hasLow := number(object, "low")
		high, hasHigh := number(object, "high")
		_, ranged := object["low"]
		switch {
		case !ranged:
			if known && mean < 0 {
				broken(-mean, "%s: mean %.4g", path, mean)
			}
		case known && (!hasLow || !hasHigh):
			broken(1, "%s: a mean without an interval", path)
		case known && (low > mean*(1+rounding) || high < mean*(1-rounding)) && !signed(path, object):
			broken(math.Max(low-mean, mean-high)/math.Max(math.Abs(mean), 1e-12), "%s: mean %.5g, low %.5g, high %.5g", path, mean, low, high)
		case known && low < 0 && !signed(path, object):
			broken(-low, "%s: low %.4g", path, low)
		}
	})
}

// signed reports whether a figure may lie below nothing: a temperature, a balance of charges, what a meter is off by.
func signed(path string, object map[string]any) bool {
	return object["unit"] == "°C" || strings.Contains(path, "freezing") || strings.Contains(path, "strong_ion") || strings.Contains(path, "meter.zero")
}

func unknownIsNotZero(s *subject, broken say) {
	for id, object := range s.constituents() {
		mean, known := number(object, "mean")
		bounds, bounded := number(object, "with_bounds")
		if known && mean == 0 && (!bounded || bounds > 0) {
			broken(bounds, "%s is 0, with bounds %v", id, object["with_bounds"])
		}
	}
}

func upToAboveHigh(s *subject, broken say) {
	s.objects(func(path string, object map[string]any) {
		high, known := number(object, "high")
		bounds, bounded := number(object, "with_bounds")
		coverage, covered := number(object, "coverage")
		most, stated := number(object, "up_to")
		switch _, is := object["up_to"]; {
		case !known || !bounded:
		case stated && most < math.Max(high, bounds)*(1-rounding):
			broken(math.Max(high, bounds)/most-1, "%s: up_to %.5g, high %.5g, with bounds %.5g", path, most, high, bounds)
		case !is && covered && coverage < 1 && bounds < high*(1-rounding):
			broken(high/bounds-1, "%s: no up_to; with bounds %.5g, high %.5g", path, bounds, high)
		}
	})
}

// most gives the most that a constituent of a document could be, in its unit; ok is
// false where nothing bounds it. Of what is known wholly it is the interval's end.
func most(object map[string]any) (x float64, ok bool) {
	if _, stated := object["up_to"]; stated {
		return number(object, "up_to")
	}
	if coverage, known := number(object, "coverage"); known && coverage == 1 {
		return number(object, "high")
	}
	return number(object, "with_bounds")
}

// constituents are the figures of the serving in the document, in grams.
func (s *subject) constituents() map[string]map[string]any {
	serving, _ := s.documents["assay"]["serving"].(map[string]any)
	list, _ := serving["constituents"].(map[string]any)
	all := map[string]map[string]any{}
	for id, x := range list {
		all[id], _ = x.(map[string]any)
	}
	return all
}

func upToBelowTheServing(s *subject, broken say) {
	mass := s.assay.Mass.High
	for id, object := range s.constituents() {
		c := must(id)
		if x, ok := most(object); ok && ofMass(c) && c.PerGram > 0 && x/c.PerGram > mass*(1+1e-6) {
			broken(x/c.PerGram/mass-1, "%s could be %.4g g of %.4g g", id, x/c.PerGram, mass)
		}
	}
}

func upToBelowTheParents(s *subject, broken say) {
	all := s.constituents()
	for _, id := range order(all) {
		c := must(id)
		parent, has := all[string(c.Parent)]
		if c.Parent == "" || !has {
			continue
		}
		part, ok := most(all[id])
		total, bounded := most(parent)
		p := must(string(c.Parent))
		if ok && bounded && part/c.PerGram > total/p.PerGram*(1+1e-6)+rounding {
			broken(part/c.PerGram/(total/p.PerGram)-1, "%s could be %.4g g, %s %.4g g", id, part/c.PerGram, p.ID, total/p.PerGram)
		}
	}
}

func shareInADocument(s *subject, broken say) {
	s.objects(func(path string, object map[string]any) {
		x, ok := number(object, "share")
		low, hasLow := number(object, "share_low")
		high, hasHigh := number(object, "share_high")
		if !ok || !hasLow || !hasHigh {
			return
		}
		const known = 0.001 // of a whole: a thousand draws know the ends of an interval no better
		if low < 0 || low > x+known || x > high+known || high > 1+1e-6 {
			broken(math.Max(high-1, math.Max(low-x, x-high)), "%s: share %.4g (%.4g–%.4g)", path, x, low, high)
		}
	})
}

func componentOnce(s *subject, broken say) {
	seen := map[string]bool{}
	list, _ := s.documents["assay"]["components"].([]any)
	for _, x := range list {
		c, _ := x.(map[string]any)
		name := fmt.Sprint(c["name"])
		if seen[name] {
			broken(1, "%s is listed twice", name)
		}
		seen[name] = true
	}
}

func contributionOnce(s *subject, broken say) {
	evidence, _ := s.documents["evidence"]["categories"].([]any)
	for _, x := range evidence {
		category, _ := x.(map[string]any)
		seen := map[string]bool{}
		parts, _ := category["contributions"].([]any)
		for _, p := range parts {
			part, _ := p.(map[string]any)
			key := fmt.Sprint(part["constituent"], " of ", part["component"])
			if seen[key] {
				broken(1, "%v: %s twice", category["name"], key)
			}
			seen[key] = true
		}
	}
}

func withheldInADocument(s *subject, broken say) {
	s.objects(func(path string, object map[string]any) {
		if !strings.Contains(path, ".chemistry") {
			return
		}
		x, there := object["mean"]
		why, _ := object["why"].(string)
		if there && x == nil && why == "" {
			broken(1, "%s is null without a reason", path)
		}
		low, hasLow := number(object, "low")
		high, hasHigh := number(object, "high")
		if there && x == nil && hasLow && hasHigh && low > high {
			broken(low-high, "%s: bounds %.4g to %.4g", path, low, high)
		}
	})
}

// oneWordOnThePH reads the pages: a pot begins at a line that is indented less
// than its figures and ends with the next.
func oneWordOnThePH(s *subject, broken say) {
	for _, view := range []string{"assay", "sheet"} {
		none := ""
		s.lines(func(of, line string) {
			text := strings.TrimSpace(line)
			switch {
			case of != view:
			case strings.HasPrefix(text, "no pH"):
				none = text
			case strings.HasPrefix(text, "The pH rests on"):
				if none != "" {
					broken(1, "%s: “%s” and “%s”", view, none, text)
				}
				none = ""
			case strings.HasPrefix(line, "  ") && !strings.HasPrefix(line, "   ") && !strings.Contains(line, "  ·") && !strings.Contains(text, "   "):
				none = "" // another pot's name, or prose
			}
		})
	}
}

func densityOfALiquid(s *subject, broken say) {
	chemistry, _ := s.documents["assay"]["chemistry"].(map[string]any)
	density, _ := chemistry["density"].(map[string]any)
	d, ok := number(density, "mean")
	switch {
	case !ok:
	case s.liquid() && !s.holds("acid", "salt") && (d < limit("density least") || d > limit("density most")):
		broken(math.Abs(d-1), "%.4g g/ml", d)
	case d < limit("foam") || d > limit("rock salt"):
		broken(d, "no food has %.4g g/ml", d)
	}
}

func brixOfLiquids(s *subject, broken say) {
	chemistry, _ := s.documents["assay"]["chemistry"].(map[string]any)
	brix, _ := chemistry["brix"].(map[string]any)
	x, ok := number(brix, "mean")
	high, _ := number(brix, "high")
	switch {
	case !ok:
	case !s.liquid():
		broken(x, "%.4g °Bx of what holds %.2g g of water and alcohol in 100 g", x, s.in100g("WATER")+s.in100g("ALC"))
	case x < 0 || high > limit("brix most"):
		broken(math.Max(-x, high), "%.4g °Bx (up to %.4g)", x, high)
	}
}

// figureOn reads the number in a printed amount; below is true for "<0.5 g".
var printedNumber = regexp.MustCompile(`[\d ]*\d(?:\.\d+)?`)

func printedValue(text string) (float64, bool) {
	if strings.HasPrefix(text, "<") || strings.HasPrefix(text, "less") {
		return 0, false
	}
	x, err := strconv.ParseFloat(strings.ReplaceAll(printedNumber.FindString(text), " ", ""), 64)
	return x, err == nil
}

// rowsBelow are rows of a card that are a part of another.
var rowsBelow = [][2]string{{"FASAT", "FAT"}, {"FATRN", "FAT"}, {"SUGAR", "CHOAVL"}, {"SUGAR", "CHOCDF"}, {"SUGAD", "SUGAR"}, {"FIBTG", "CHOCDF"}, {"POLYL", "CHOCDF"}, {"STARCH", "CHOAVL"}}

func cardInOrder(s *subject, broken say) {
	for _, card := range s.sheet.Cards() {
		value, print := map[string]float64{}, map[string]string{}
		for _, r := range card.Rows {
			for _, cell := range []*float64{r.Serving.Value, r.Serving.Kcal} {
				if cell != nil && *cell < 0 {
					broken(-*cell, "%s: %s is %.4g", card.Rules, r.Label, *cell)
				}
			}
			if r.Serving.Value != nil {
				value[r.Tag], print[r.Tag] = *r.Serving.Value, r.Serving.Printed
			}
			if r.Serving.Value != nil && r.Serving.Most != nil && *r.Serving.Most < *r.Serving.Value*(1-rounding) {
				broken(*r.Serving.Value / *r.Serving.Most, "%s: %s %.4g, at most %.4g", card.Rules, r.Label, *r.Serving.Value, *r.Serving.Most)
			}
		}
		for _, p := range rowsBelow {
			part, has := value[p[0]]
			total, have := value[p[1]]
			if has && have && part > total*(1+1e-6)+1e-9 {
				broken(part/math.Max(total, 1e-9)-1, "%s: %s %.4g above %s %.4g", card.Rules, p[0], part, p[1], total)
			}
			x, isX := printedValue(print[p[0]])
			y, isY := printedValue(print[p[1]])
			if has && have && isX && isY && x > y {
				broken(x-y, "%s prints %s %s above %s %s", card.Rules, p[0], print[p[0]], p[1], print[p[1]])
			}
		}
	}
}

func cardEnergy(s *subject, broken say) {
	for _, card := range s.sheet.Cards() {
		for _, r := range card.Rows {
			kj, kcal := r.Serving.Value, r.Serving.Kcal
			if kj == nil || kcal == nil || *kj <= 0 {
				continue
			}
			if q := *kj / *kcal; q < limit("kcal least")*(1-1e-6) || q > limit("kcal most")*(1+1e-6) {
				broken(math.Abs(q-4.184), "%s: %.4g kJ and %.4g kcal: %.4g", card.Rules, *kj, *kcal, q)
			}
		}
	}
}

func cautionAboveALimit(s *subject, broken say) {
	name, rows := strings.ToLower(s.assay.Drink.Name), rowsOf("cautions.csv")
	for _, d := range s.sheet.Allergens() {
		has := map[string]bool{}
		for _, c := range d.Cautions {
			has[c.Code] = true
		}
		for _, row := range rows { // a row that says more speaks for those that it silences
			for _, code := range strings.Split(row["silences"], "|") {
				has[code] = has[code] || has[row["code"]]
			}
		}
		for _, row := range rows {
			above, ok := s.highestFor(row)
			line, _ := strconv.ParseFloat(row["limit"], 64)
			excused := false
			for _, word := range strings.Split(row["exempt_names"], "|") {
				excused = excused || word != "" && strings.Contains(name, word)
			}
			ruled := row["rules"] == "" || slices.Contains(strings.Split(row["rules"], "|"), d.Rules)
			if ok && above > line && line > 0 && !has[row["code"]] && !excused && ruled {
				broken(above/line, "%s: %s could be %.4g %s, above %.4g, and nothing says so", d.Rules, row["code"], above, row["unit"], line)
			}
		}
	}
}

// highestFor gives the end of the interval of what a caution's row judges.
func (s *subject) highestFor(row map[string]string) (float64, bool) {
	volume := s.assay.Volume.Mean
	switch row["measure"] {
	case "amount":
		f, ok := s.assay.PerServing.Find(must(row["of"]).ID)
		if !ok || f.Unknown {
			return 0, false
		}
		switch row["basis"] {
		case "100 ml":
			return f.High * 100 / volume, true
		case "100 g":
			return f.High * 100 / s.assay.Mass.Mean, true
		}
		return f.High, true
	case "abv":
		f, ok := s.assay.PerServing.Find("ALC")
		return f.High / 0.7893 / volume * 100, ok && !f.Unknown
	}
	return 0, false
}

func withheldRestsOnNothing(s *subject, broken say) {
	s.objects(func(path string, object map[string]any) {
		meter, is := object["ph_meter"].(map[string]any)
		if rests, _ := object["calibrated_on"].([]any); is && meter["mean"] == nil && len(rests) > 0 {
			broken(1, "%s: no pH (%v), and it rests on %v", path, meter["why"], rests[0])
		}
	})
}
