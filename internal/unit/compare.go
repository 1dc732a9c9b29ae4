package unit

import "math"

// Closeness is the share by which computer arithmetic may miss a limit: 15 mg in 100 ml are
// 150 mg in a litre, and no more.
const Closeness = 1e-9

// Over reports whether a figure is more than a limit.
func Over(x, limit float64) bool { return x > limit+near(limit) }

// AtLeast reports whether a figure reaches a limit.
func AtLeast(x, limit float64) bool { return x >= limit-near(limit) }

func near(limit float64) float64 { return Closeness * max(1, math.Abs(limit)) }
