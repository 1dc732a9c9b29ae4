package textreport_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/report/text"
)

func TestGrouped(t *testing.T) {
	for n, want := range map[int]string{0: "0", 999: "999", 8789: "8789", 10000: "10\u2009000", 679045: "679\u2009045", 1000007: "1\u2009000\u2009007"} {
		assert.Equal(t, want, textreport.Grouped(n))
	}
}
