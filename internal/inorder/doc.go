// Package inorder does one thing to each of many things side by side, and hands the results over
// in the order in which the things came.
//
// # Model
//
// A feeder takes the things one by one, as they are asked for, and puts each into two queues: one
// from which the workers take what is to be done next, and one in which its place in the order is
// kept. Who asks for results waits at the first place, whatever finishes first elsewhere. Both
// queues are bounded, so that no more is done ahead of a slow one than a few for each worker, and
// what is kept at any moment does not grow with how many there are.
//
// The loop may be left at any time, and ends early when its context does: nothing runs any more
// once it has ended.
//
// # Limits
//
// The things are asked for in another goroutine, one at a time. A panic of the work ends the program,
// as it would anywhere. Who waits at a context that has ended is told nothing: the loop just ends,
// and the context says why.
package inorder
