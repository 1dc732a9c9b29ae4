package burette

func ChanceOf(p *Posterior) float64 { return p.chance() }
