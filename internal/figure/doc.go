// Package figure says how a figure is written: with how many digits, in which unit, between
// which ends, and how what nobody knows of it is told. Every form that prints figures writes
// them alike.
//
// # Model
//
// A figure goes down to the place that its standard deviation bears (Particle Data Group, Phys.
// Rev. D 98 (2018) 030001, Introduction 5.3), with three significant digits at most, and its
// ends to the same place. One too small for its unit is written in a finer one. A bound is
// rounded upwards: nobody reads a limit that is exceeded.
//
// # Limits
//
// Numbers have a decimal point, and no sign between thousands.
package figure
