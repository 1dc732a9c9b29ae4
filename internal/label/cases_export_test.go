package label

// WholePercent rounds a share in per cent as the rules round one of fat or carbohydrate; ok is
// false where they have no such rule.
func WholePercent(rules string, share float64) (text string, ok bool) {
	r := rulesets()[rules]
	if r == nil {
		return "", false
	}
	for _, l := range r.lines {
		if l.key == "fat" && l.percent != "" {
			return render(share, r.bands[l.percent]).text, true
		}
	}
	return "", false
}
