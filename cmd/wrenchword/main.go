// Command wrenchword reads the timed transcript of a recording in which somebody
// works on a machine and talks, and writes what they still owe when the camera
// stops: the procedure, the open questions and the tightening round.
package main

import (
	"context"
	"errors"
	"os"
	"os/signal"
	"runtime/debug"
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

func main() {
	collectRarely(true)
	os.Exit(run())
}

// collectRarely lets a short run end before its memory is ever gathered in, which
// is a third of its time otherwise. Large files turn it off again.
func collectRarely(on bool) {
	switch {
	case os.Getenv("GOGC") != "": // the person knows better
	case on:
		debug.SetGCPercent(500)
	default:
		debug.SetGCPercent(100)
	}
}

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
