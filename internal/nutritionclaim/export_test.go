package nutritionclaim

// ConditionsOf gives how many conditions a claim of some rules has.
func ConditionsOf(rules, name string) int {
	for _, k := range rulesets()[rules].claims {
		if k.name == name {
			return len(k.conditions)
		}
	}
	return 0
}

// Names lists the claims of some rules.
func Names(rules string) (names []string) {
	for _, k := range rulesets()[rules].claims {
		names = append(names, k.name)
	}
	return names
}
