package label

// MakeFrom prints a card under rules of given tables.
func MakeFrom(t Tables, rules string, f Facts) (Card, error) {
	r := read(t)[rules]
	basis, err := r.basis(f)
	if err != nil {
		return Card{}, err
	}
	return r.card(rules, basis, f.closed()), nil
}
