package main

import (
	"fmt"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// lend gives a row that is borrowed from another food of the table that food's figure; any
// other row as it is. The figure keeps its works and names the food whose own it is, so that
// both foods draw it alike.
func lend(made map[string]map[constituent.ID]record, row record, id constituent.ID) (record, error) {
	if row["source"] != food.Borrowed {
		return row, nil
	}
	if row["amount"]+row["sd"]+row["low"]+row["high"]+row["state"] != "" {
		return nil, fmt.Errorf("%s is borrowed from %s: leave its figures empty", id, row["ref"])
	}
	lender, seen := row["ref"], map[string]bool{}
	for {
		own, ok := made[lender][id]
		switch {
		case !ok:
			return nil, fmt.Errorf("%s is to be borrowed from %q, which has none", id, lender)
		case seen[lender]:
			return nil, fmt.Errorf("%s is borrowed in a circle through %s", id, lender)
		}
		seen[lender] = true
		if own["source"] == food.Borrowed {
			lender = own["ref"]
			continue
		}
		if food.IsAgencyRow(own["source"], own["ref"]) {
			return nil, fmt.Errorf("%s of %s is a row of SR28: take that row", id, lender)
		}
		state, err := estimate.ParseState(own["state"])
		if err != nil {
			return nil, fmt.Errorf("%s of %s: %w", id, lender, err)
		}
		lent := record{"code": row["code"], "constituent": string(id), "source": food.Borrowed + " " + own["source"], "ref": lender}
		for _, column := range []string{"amount", "sd", "n", "low", "high"} {
			lent[column] = own[column]
		}
		lent["state"] = max(state, estimate.Calculated).String()
		return lent, nil
	}
}
