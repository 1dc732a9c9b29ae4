package constituent

import "sync"

// Tree is the sum rules: which ledger columns add up to each parent.
type Tree struct {
	leaves   map[ID][]*Constituent
	children map[ID][]*Constituent
}

// Sums gives the tree of the vocabulary.
var Sums = sync.OnceValue(func() *Tree {
	t := &Tree{leaves: map[ID][]*Constituent{}, children: map[ID][]*Constituent{}}
	for _, c := range All() {
		if c.Parent == "" {
			continue
		}
		t.children[c.Parent] = append(t.children[c.Parent], c)
		if c.Kind == Parent {
			continue
		}
		for up := c.Parent; up != ""; up = Must(up).Parent {
			t.leaves[up] = append(t.leaves[up], c)
		}
	}
	return t
})

// Leaves gives the leaves and rests below a parent, in vocabulary order.
func (t *Tree) Leaves(parent ID) []*Constituent { return t.leaves[parent] }

// Children gives the direct parts of a parent, in vocabulary order.
func (t *Tree) Children(parent ID) []*Constituent { return t.children[parent] }

// RestOf gives the rest of a parent: "SUGAR-other" for "SUGAR".
func RestOf(parent ID) ID { return parent + "-other" }
