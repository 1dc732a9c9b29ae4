package houserules

import (
	"sipsum/internal/embedded"
	"sipsum/internal/phrase"
)

// handOver answers for a paper to hand over: which command prints it (data/hand_over.csv).
func handOver(text string) Line {
	l := Line{Key: "hand-over", Rule: "to hand over: " + text}
	for _, row := range embedded.Rows("hand_over.csv") {
		if phrase.Read(row.Text("words")).In(phrase.Words(text)) {
			l.Verdict, l.Why = Pass, "sipsum "+row.Text("command")+" prints "+row.Text("prints")+"; bring it"
			return l
		}
	}
	l.Verdict, l.Why = CannotTell, "no command prints it: a thing for you to bring"
	return l
}
