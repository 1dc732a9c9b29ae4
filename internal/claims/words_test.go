package claims_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/assay/assaytest"
)

// Each rung of data/claim_verdicts.csv has its own word, in the line as anywhere else. The caffeine of the coffees is
// 8 mg with a standard deviation of 1.7.
func TestEachVerdictHasItsWord(t *testing.T) {
	for least, words := range map[string]string{"3": "holds in ", "6.5": "likely: holds in ", "8": "unclear: holds in ", "9.8": "unlikely: holds in ", "14": "fails: holds in "} {
		s := judged(t, assaytest.Core(t), coffees(2, fmt.Sprintf(`serving(CAFFN) > %s mg`, least)))[0]
		assert.Regexp(t, "^"+words, s.Line(), least)
		assert.Regexp(t, "^"+s.Says(), s.InShort())
	}
}
