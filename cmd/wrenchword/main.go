// Command wrenchword reads the timed transcript of a recording in which somebody
// works on a machine and talks, and writes what they still owe when the camera
// stops: the procedure, the open questions and the tightening round.
package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/signal"
	"runtime/debug"
	"syscall"
	"time"
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
// is a third of its time otherwise. Large files turn it off again: for them it is
// gathered in early, which costs them little.
func collectRarely(on bool) {
	switch {
	case os.Getenv("GOGC") != "": // the person knows better
	case on:
		debug.SetGCPercent(500)
	default:
		debug.SetGCPercent(50)
	}
}

// windUp is how long a run that was told to end may take to leave all as it
// should be. Files are written whole or not at all, so that it may end anywhere.
const windUp = 2 * time.Second

func run() int {
	// A reader of standard output that goes away is an error of the write, not
	// the end of a run that has a file to write yet.
	signal.Ignore(syscall.SIGPIPE)
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	root := newRootCmd()
	code := make(chan int, 1)
	go func() {
		cmd, err := root.ExecuteContextC(ctx)
		switch {
		case err == nil:
			code <- exitDone
		case errors.Is(err, errOpen):
			code <- exitOpen
		default:
			newSayer(cmd).failure(advised(err))
			code <- exitBad
		}
	}()
	select {
	case c := <-code:
		return c
	case <-ctx.Done():
	}
	select {
	case c := <-code:
		return c
	case <-time.After(windUp): // it waits for input, say
		newSayer(root).failure(errors.New("ended by a signal; no file was left half written; run it again"))
		return exitBad
	}
}

// advised adds what to do to errors that only the system can explain.
func advised(err error) error {
	todo := ""
	switch {
	case errors.Is(err, context.Canceled):
		todo = "ended by a signal; no file was left half written; run it again"
	case errors.Is(err, syscall.EPIPE):
		todo = "what reads the output ended before all of it was written; read it to its end, or write a file with -o"
	case errors.Is(err, syscall.ENOSPC), errors.Is(err, syscall.EDQUOT), errors.Is(err, syscall.EFBIG):
		todo = "there is no room; what was there is as it was; make room and run it again"
	case errors.Is(err, syscall.EROFS):
		todo = "nothing can be written there; name a place that can be written to"
	case errors.Is(err, fs.ErrPermission):
		todo = "you may not read or write that; change its permissions, or name a place of your own"
	case errors.Is(err, syscall.EISDIR), errors.Is(err, syscall.ENOTDIR):
		todo = "name a file where a file is wanted, and a folder where a folder is"
	default:
		return err
	}
	return fmt.Errorf("%w: %s", err, todo)
}
