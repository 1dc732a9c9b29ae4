package main

import (
	"context"
	"fmt"
	"strconv"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/tables/sr"
)

const srSource = "sr28" // of sources.csv

// inFat is the phase of what dissolves in fat (data/constituents.csv).
const inFat = "fat"

// digits of a number calculated from SR28 (standard deviations, pressed rows).
const digits = 4

// wanted are the constituents that a drink needs of SR28. Amino acids, single
// fatty acids, other tocopherols and second expressions of vitamins A, D and
// folate stay in the table itself.
var wanted = []constituent.ID{
	"WATER", "PROCNT", "FAT", "FASAT", "FAMS", "FAPU", "CHOCDF", "SUGAR", "GLUS", "FRUS", "GALS", "SUCS", "LACS", "MALS",
	"STARCH", "FIBTG", "ALC", "ASH", "FATRN", "CHOLE", "CAFFN", "THEBRN",
	"NA", "K", "CA", "MG", "P", "FE", "ZN", "CU", "MN", "SE", "FD",
	"VITC", "THIA", "RIBF", "NIA", "PANTAC", "VITB6A", "FOL", "FOLDFE", "VITB12", "CHOLN",
	"VITA_RAE", "RETOL", "CARTA", "CARTB", "CRYPXB", "LYCPN", "LUT+ZEA", "VITD", "TOCPHA", "VITK1", "PHYSTR",
	"ENERC", "ENERC_KCAL",
}

// readSR reads the picked foods of the release at path, by NDB number.
func readSR(ctx context.Context, path string, p picks) (map[string]*food.Food, error) {
	picked := map[string]bool{}
	for _, f := range p.foods {
		if f["sr"] != "" {
			picked[f["sr"]] = true
		}
	}
	release, err := sr.Format.Open(ctx, path, "")
	if err != nil {
		return nil, err
	}
	byNumber := map[string]*food.Food{}
	for f, err := range release.Foods {
		if err != nil {
			return nil, err
		}
		if picked[f.ID.Code] {
			byNumber[f.ID.Code] = f
		}
	}
	for number := range picked {
		if byNumber[number] == nil {
			return nil, fmt.Errorf("SR28 has no food %s", number)
		}
	}
	return byNumber, nil
}

// take copies the wanted values of an SR28 row as it prints them.
func take(f record, from *food.Food) map[constituent.ID]record {
	rows := map[constituent.ID]record{}
	for _, id := range wanted {
		v, ok := from.Value(id)
		if !ok {
			continue
		}
		row := record{
			"code": f["code"], "constituent": string(id), "amount": printed(v.Amount), "sd": spread(v.SD),
			"low": printed(v.Low), "high": printed(v.High), "state": v.State.String(), "source": srSource, "ref": f["sr"],
		}
		if v.N > 0 {
			row["n"] = strconv.Itoa(v.N)
		}
		if v.State == estimate.Below {
			row["low"], row["high"], row["sd"] = "", printed(v.Limit), ""
		}
		rows[id] = row
	}
	return rows
}

// press gives the row of the juice of a fruit whose fibre stays in the cake.
func press(f record, from *food.Food) (map[constituent.ID]record, error) {
	fibre, ok := from.Value("FIBTG")
	if !ok || !food.Stated(fibre.Amount) {
		return nil, fmt.Errorf("SR28 %s states no fibre: it cannot be pressed", f["sr"])
	}
	rows := map[constituent.ID]record{}
	for _, id := range wanted {
		v, ok := from.Value(id)
		c := constituent.Must(id)
		staysInCake := id == "FIBTG" || (c.Kind == constituent.Rider && c.Phase == inFat)
		if !ok || c.Kind == constituent.Figure || staysInCake {
			continue
		}
		grow := 100 / (100 - fibre.Amount)
		amount := v.Amount
		if id == "CHOCDF" {
			amount -= fibre.Amount
		}
		row := record{"code": f["code"], "constituent": string(id), "source": srSource, "ref": f["sr"] + " pressed"}
		switch v.State {
		case estimate.Below:
			row["state"], row["high"] = v.State.String(), rounded(v.Limit*grow, digits)
		case estimate.Assumed:
			row["state"], row["amount"] = v.State.String(), printed(v.Amount)
		default:
			row["state"], row["amount"], row["sd"] = estimate.Calculated.String(), rounded(amount*grow, digits), spread(v.SD*grow)
		}
		rows[id] = row
	}
	return rows, nil
}
