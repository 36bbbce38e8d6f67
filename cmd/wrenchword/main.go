// Command wrenchword reads the timed transcript of a recording in which somebody
// works on a machine and talks, and writes what they still owe when the camera
// stops: the procedure, the open questions and the tightening round.
package main

import (
	"context"
	"errors"
	"os"
	"os/signal"
)

// Exit codes.
const (
	exitDone = 0
	exitOpen = 1 // something stands open, was refused or is left over
	exitBad  = 2 // bad input or bad use; nothing was written
)

// errOpen ends a command that did its work and found something open. It has
// been said on standard output already and is not said again.
var errOpen = errors.New("something stands open")

func main() { os.Exit(run()) }

func run() int {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	root := newRootCmd()
	cmd, err := root.ExecuteContextC(ctx)
	switch {
	case err == nil:
		return exitDone
	case errors.Is(err, errOpen):
		return exitOpen
	}
	newSayer(cmd).failure(err)
	return exitBad
}
