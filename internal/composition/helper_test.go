package composition_test

// exact is the difference that rounding of floating point numbers may make.
const exact = 1e-9
