package cli

import (
	"io"

	"github.com/spf13/cobra"

	"sipsum/internal/report/csv"
	"sipsum/internal/report/html"
	"sipsum/internal/report/json"
	"sipsum/internal/report/markdown"
	"sipsum/internal/report/svg"
	"sipsum/internal/report/text"
	"sipsum/internal/sheet"
)

// sheetPaper is the paper of a sheet if nobody says otherwise.
const sheetPaper = "a4"

func newSheet(a *app) *cobra.Command {
	return a.command(view{
		use: "sheet", short: "everything about a drink on one page",
		long: "sheet prints everything about a drink: the brief, evidence by category, composition, cards, allergens and\n" +
			"cautions, what is not known, and the sources. As html it is one file to look at, to send and to print: the\n" +
			"brief with its pictures on the first page, the card on the second, the rest behind them.",
		text: textreport.Sheet, json: jsonreport.Sheet, set: setOnPaper, paper: sheetPaper,
		ruled: true, reads: true, claims: true, proposes: true, house: true,
		findings: sheet.NotReady,
	})
}

// setOnPaper prints a sheet in one of the forms of what is handed out.
func setOnPaper(w io.Writer, s *sheet.Sheet, form, paper string) error {
	p := sheet.PaperOf(s)
	switch form {
	case formatHTML:
		return htmlreport.Sheet(w, p, paper)
	case formatSVG:
		return svgreport.Sheet(w, p)
	case formatCSV:
		return csvreport.Sheet(w, p)
	}
	return markdownreport.Sheet(w, p)
}
