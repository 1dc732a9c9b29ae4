package store_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/food"
	"sipsum/internal/store"
)

func TestADatabaseInMemory(t *testing.T) {
	first, err := store.OpenMemory(t.Context())
	require.NoError(t, err)
	defer first.Close()
	load(t, first, "core", "1", plain("core", "x", "Sugar"))
	second, err := store.OpenMemory(t.Context())
	require.NoError(t, err)
	defer second.Close()
	_, found, err := second.Table(t.Context(), "core")
	require.NoError(t, err)
	assert.False(t, found, "two databases in memory are two")

	f, err := first.Food(t.Context(), food.ID{Table: "core", Code: "x"})
	require.NoError(t, err)
	assert.Equal(t, "Sugar", f.Name())
	for range first.All(t.Context(), "core") { // two readers at once
		_, err := first.Tables(t.Context())
		require.NoError(t, err)
	}
}
