package main

import (
	"fmt"
	"io"
	"os"
	"strings"
	"unicode"

	"github.com/spf13/cobra"
	"golang.org/x/term"
)

// sayer writes messages to standard error: lower case, no full stop, the file
// and line first where there is one. Data never goes through it.
type sayer struct {
	w      io.Writer
	quiet  bool
	colour bool
}

func newSayer(cmd *cobra.Command) sayer {
	s := sayer{w: cmd.ErrOrStderr()}
	s.quiet, _ = cmd.Flags().GetBool("quiet")
	plain, _ := cmd.Flags().GetBool("no-color")
	if f, ok := s.w.(*os.File); ok && !plain && os.Getenv("NO_COLOR") == "" {
		s.colour = term.IsTerminal(int(f.Fd()))
	}
	return s
}

// note says something worth knowing.
func (s sayer) note(format string, a ...any) { s.say("", "", format, a...) }

// warning says that something was skipped or is in doubt.
func (s sayer) warning(format string, a ...any) { s.say("warning: ", "33", format, a...) }

// failure says what went wrong; it is said even when quiet.
func (s sayer) failure(err error) {
	s.quiet = false
	s.say("wrenchword: ", "31", "%v", err)
}

func (s sayer) say(label, colour, format string, a ...any) {
	if s.quiet {
		return
	}
	if s.colour && label != "" {
		label = "\x1b[" + colour + "m" + label + "\x1b[0m"
	}
	fmt.Fprintf(s.w, "%s%s\n", label, printable(fmt.Sprintf(format, a...)))
}

// printable drops what could act on a terminal from text that may have come
// from a transcript or a document.
func printable(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\t' || unicode.IsPrint(r):
			return r
		case unicode.IsSpace(r):
			return ' '
		}
		return -1
	}, s)
}

// safeWriter is a command's standard output for lines that people read.
type safeWriter struct{ w io.Writer }

func (s safeWriter) Write(p []byte) (int, error) {
	if _, err := io.WriteString(s.w, printable(string(p))); err != nil {
		return 0, err
	}
	return len(p), nil
}
