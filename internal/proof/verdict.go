package proof

// Verdict is what a check of a pack found.
type Verdict struct {
	Pack    *Opened
	Program string // that checked it

	Broken    []string // what speaks against the file being the one that was written
	Constants []string // of the pack that are not the program's
	Failed    string   // why nothing could be calculated; empty: it was
	Moved     []Moved

	Here   bool // the rows were compared with the tables that are loaded
	Differ []string
	Absent []string
}

// SameProgram reports whether the pack is of the program that checks it.
func (v *Verdict) SameProgram() bool { return v.Pack.Program == v.Program }

// Same reports whether the figures of a pack follow from what is in it, and nothing speaks against
// the file. Constants of another program may be other ones.
func (v *Verdict) Same() bool {
	return len(v.Broken)+len(v.Moved) == 0 && v.Failed == "" && (len(v.Constants) == 0 || !v.SameProgram())
}

// Stored counts the stored numbers of a pack.
func (v *Verdict) Stored() int {
	n := 0
	for i := range v.Pack.Figures {
		f := &v.Pack.Figures[i]
		for _, x := range []*float64{f.Mean, f.SD, f.Low, f.High, f.UpTo} {
			if x != nil {
				n++
			}
		}
		for _, p := range f.Parts {
			if p.Mean != nil || p.Most != nil {
				n++
			}
		}
	}
	return n
}
