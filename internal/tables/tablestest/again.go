package tablestest

import (
	"context"
	"fmt"
	"hash/fnv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/tables/table"
)

// print hashes all that a release gives.
func print(t *testing.T, r *table.Release) uint64 {
	t.Helper()
	h := fnv.New64a()
	fmt.Fprintf(h, "%+v %+v %+v", r.Table, r.Columns, r.Works)
	for f, err := range r.Foods {
		require.NoError(t, err)
		fmt.Fprintf(h, "%+v", *f)
	}
	return h.Sum64()
}

// checkAgain reads twice, from two openings and from one.
func checkAgain(t *testing.T, format table.Format, dir string) {
	one, two := Open(t, format, dir), Open(t, format, dir)
	assert.Equal(t, one.Table.Hash, two.Table.Hash)
	first := print(t, one)
	assert.Equal(t, first, print(t, two), "two openings differ")
	assert.Equal(t, first, print(t, one), "the stream cannot be read again")

	ctx, cancel := context.WithCancel(t.Context())
	release, err := format.Open(ctx, dir, "")
	require.NoError(t, err)
	cancel()
	for _, err := range release.Foods {
		assert.ErrorIs(t, err, context.Canceled)
	}
	for range one.Foods {
		break // leaving early is not an error
	}
}

// checkRenamed loads under another id: kept columns follow it.
func checkRenamed(t *testing.T, format table.Format, dir string) {
	const id = "another"
	r := openAs(t, format, dir, id)
	assert.Equal(t, id, r.Table.ID)
	assert.Equal(t, format.Name, r.Table.Format)
	for _, c := range r.Columns {
		if !c.Constituent {
			assert.Equal(t, constituent.ID(id+":"+c.Number), c.ID)
		}
	}
	for f, err := range r.Foods {
		require.NoError(t, err)
		assert.Equal(t, id, f.ID.Table)
	}
}
