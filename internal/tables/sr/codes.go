package sr

import (
	"fmt"
	"io"
	"math"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/source"
	"sipsum/internal/tables/table"
)

const licence = "public domain (US Government work)"

// column is a row of NUTR_DEF and where its values go.
type column struct {
	index  int
	id     constituent.ID
	factor float64
	limit  float64 // half of the last decimal printed, in the unit stored
}

// columns reads NUTR_DEF: Nutr_No Units Tagname NutrDesc Num_Dec SR_Order.
func columns(files folder, tableID string) ([]food.Column, map[string]column, error) {
	mapping := table.ReadMap(name)
	in, err := openLines(files, columnFile, 6)
	if err != nil {
		return nil, nil, err
	}
	defer in.close()
	var all []food.Column
	byNumber := map[string]column{}
	for {
		if err := in.next(); err == io.EOF {
			return all, byNumber, nil
		} else if err != nil {
			return nil, nil, err
		}
		number := in.text(0)
		row, ok := mapping.Find(number)
		if !ok {
			return nil, nil, in.wrongField(0, fmt.Sprintf("column %.40q is not known to sipsum", number), "this is not a release that sipsum can read whole; report it")
		}
		if _, twice := byNumber[number]; twice {
			return nil, nil, in.wrongField(0, fmt.Sprintf("column %.40q stands twice", number), again)
		}
		decimals, err := in.count(4)
		if err != nil {
			return nil, nil, err
		}
		byNumber[number] = column{index: len(all), id: row.ID(tableID), factor: row.Factor, limit: math.Pow10(-decimals) / 2 * row.Factor}
		all = append(all, food.Column{
			ID: row.ID(tableID), Number: number, Name: in.text(3), Unit: in.text(1), Decimals: decimals,
			Constituent: row.Fate == table.Mapped,
		})
	}
}

// groups reads FD_GROUP: FdGrp_Cd FdGrp_Desc.
func groups(files folder) (map[string]string, error) {
	return pairs(files, groupFile, func(string, string) {})
}

// pairs reads a file of two fields, a code and its meaning.
func pairs(files folder, name string, use func(code, meaning string)) (map[string]string, error) {
	in, err := openLines(files, name, 2)
	if err != nil {
		return nil, err
	}
	defer in.close()
	byCode := map[string]string{}
	for {
		if err := in.next(); err == io.EOF {
			return byCode, nil
		} else if err != nil {
			return nil, err
		}
		code, meaning := in.text(0), in.text(1)
		if _, twice := byCode[code]; twice {
			return nil, in.wrongField(0, fmt.Sprintf("code %.40q stands twice", code), again)
		}
		byCode[code] = meaning
		use(code, meaning)
	}
}

// origin is a kind of source: a row of SRC_CD.
type origin struct {
	id       string
	analysed bool
	assumed  bool
}

// origins reads SRC_CD and, if it is there, DERIV_CD; the works are what the
// source and ref of a value name.
func origins(files folder) ([]source.Work, map[string]origin, error) {
	kinds := table.SourceKinds(name)
	var works []source.Work
	byCode := map[string]origin{}
	_, err := pairs(files, sourceFile, func(code, meaning string) {
		kind := kinds[code]
		byCode[code] = origin{id: "src" + code, analysed: kind.Analysed, assumed: kind.Assumed}
		works = append(works, source.Work{
			ID: "src" + code, Citation: "USDA National Nutrient Database for Standard Reference, source code " + code + ": " + meaning,
			Licence: licence, Grade: kind.Grade, Note: kind.Why,
		})
	})
	if err != nil || !files.has(derivFile) {
		return works, byCode, err
	}
	_, err = pairs(files, derivFile, func(code, meaning string) {
		works = append(works, source.Work{
			ID: derivRef(code), Citation: "USDA National Nutrient Database for Standard Reference, derivation code " + code + ": " + meaning,
			Licence: licence,
		})
	})
	return works, byCode, err
}

func derivRef(code string) string { return "deriv" + code }
