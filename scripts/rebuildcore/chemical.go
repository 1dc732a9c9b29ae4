package main

import (
	"fmt"
	"strconv"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
)

// chemicalDigits of a share by formula: more than the atomic weights warrant,
// so that the parts still add up.
const chemicalDigits = 6

// byFormula gives the values of a pure substance, per 100 g.
func byFormula(c record) (map[constituent.ID]record, error) {
	substance, err := constituent.MolarMass(c["formula"])
	if err != nil {
		return nil, err
	}
	rows := map[constituent.ID]record{}
	add := func(id constituent.ID, share float64) {
		rows[id] = record{
			"code": c["code"], "constituent": string(id), "amount": rounded(share*100*constituent.Must(id).PerGram, chemicalDigits),
			"state": estimate.Calculated.String(), "source": c["source"], "ref": c["formula"],
		}
	}
	rest := 1.0
	for part := range strings.FieldsSeq(c["parts"]) {
		name, times, ok := strings.Cut(part, "×")
		if !ok {
			return nil, fmt.Errorf("part %q: write it as CITAC×1", part)
		}
		n, err := strconv.Atoi(times)
		if err != nil {
			return nil, fmt.Errorf("part %q: %w", part, err)
		}
		known, ok := constituent.Find(name)
		if !ok || known.Molar == 0 {
			return nil, fmt.Errorf("part %q: no constituent with a formula has this name", part)
		}
		share := float64(n) * known.Molar / substance
		if known.Kind == constituent.Leaf {
			rest -= share
		}
		add(known.ID, share)
	}
	const tolerance = 1e-9
	switch {
	case c["rest"] == "" && (rest > tolerance || rest < -tolerance):
		return nil, fmt.Errorf("the parts of %s make up %.4f of it and no leaf takes the rest", c["formula"], 1-rest)
	case rest < -tolerance:
		return nil, fmt.Errorf("the parts of %s exceed it", c["formula"])
	case c["rest"] != "":
		add(constituent.ID(c["rest"]), rest)
	}
	return rows, nil
}
