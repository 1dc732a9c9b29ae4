package fail_test

import (
	"errors"
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/fail"
)

func TestListReportsEveryFaultInOrderOfPlace(t *testing.T) {
	var l fail.List
	require.NoError(t, l.Err(fail.Wrong))
	l.Add(fail.Place{File: "a.yaml", Line: 9, Col: 2}, "write g", "unknown unit %q", "gr")
	l.Add(fail.Place{File: "a.yaml", Line: 3}, "", "unknown key")
	l.Add(fail.Place{File: "a.yaml", Line: 3}, "", "unknown key")
	err := l.Err(fail.Wrong)
	require.Error(t, err)
	assert.Equal(t, "a.yaml:3: unknown key\na.yaml:9:2: unknown unit \"gr\" (write g)", err.Error())
	assert.Equal(t, fail.Wrong, fail.ExitCode(err))
}

func TestJoinKeepsPlacesAndFillsMissingOnes(t *testing.T) {
	var l fail.List
	at := fail.Place{File: "b.yaml", Line: 1, Col: 1}
	l.Join(at, fail.New(fail.Failed, "no such food", "see food find"))
	l.Join(at, errors.New("plain"))
	l.Join(at, nil)
	assert.Equal(t, 2, l.Len())
	assert.Equal(t, "b.yaml:1:1: no such food (see food find)\nb.yaml:1:1: plain", l.Err(fail.Wrong).Error())
}

func TestExitCode(t *testing.T) {
	assert.Equal(t, fail.OK, fail.ExitCode(nil))
	assert.Equal(t, fail.Failed, fail.ExitCode(errors.New("bug")))
	wrapped := fmt.Errorf("while reading: %w", fail.New(fail.NeedsTable, "no table", ""))
	assert.Equal(t, fail.NeedsTable, fail.ExitCode(wrapped))
	cause := errors.New("disk full")
	assert.ErrorIs(t, fail.Because(fail.Failed, cause, "cannot write", ""), cause)
}

func TestOrListsWords(t *testing.T) {
	assert.Empty(t, fail.Or(nil))
	assert.Equal(t, "milk", fail.Or([]string{"milk"}))
	assert.Equal(t, "milk or cream", fail.Or([]string{"milk", "cream"}))
	assert.Equal(t, "milk, cream or whey", fail.Or([]string{"milk", "cream", "whey"}))
}

func TestAPlaceWithoutAFileSaysItsLine(t *testing.T) {
	assert.Empty(t, fail.Place{}.String())
	assert.Equal(t, ":1:2", fail.Place{Line: 1, Col: 2}.String())
	assert.Equal(t, "a.yaml", fail.Place{File: "a.yaml"}.String())
	assert.Equal(t, "a.yaml:1", fail.Place{File: "a.yaml", Line: 1}.String())
}
