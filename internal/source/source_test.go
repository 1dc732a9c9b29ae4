package source_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/source"
)

func TestIsFromMemory(t *testing.T) {
	assert.True(t, source.IsFromMemory("handbook, p. 3; from memory"))
	assert.False(t, source.IsFromMemory("handbook, p. 3"))
}
