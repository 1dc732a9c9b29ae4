package cli

import (
	"github.com/spf13/cobra"

	"sipsum/internal/report/json"
	"sipsum/internal/report/text"
	"sipsum/internal/sheet"
)

func newBrief(a *app) *cobra.Command {
	return a.command(view{
		use: "brief", short: "a drink on one screen: what is in it, who brings it, what to say",
		long: "brief tells a drink on one screen: sweet, sour, bitter, body and sparkle, each with its figure, its range\n" +
			"and the ingredients that bring it, against the coffee alone; what surely may be said, and what is tempting\n" +
			"and may not; which reading to take next, with the line to write; the one change that mends what fails; and what a\n" +
			"guest must know. What does not fit is counted.",
		text: textreport.Brief, json: jsonreport.Brief, ruled: true, reads: true, proposes: true, house: true,
		findings: sheet.BriefToDecide,
	})
}
