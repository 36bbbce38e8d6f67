package main

import (
	"context"
	"errors"
	"fmt"
	"math"
	"runtime/debug"
	"strings"
	"sync"

	"github.com/spf13/cobra"

	"wrenchword/extract"
	"wrenchword/extract/lexicon"
	"wrenchword/extract/transcript"
	"wrenchword/render"
)

// jobFlags are the flags that say what job a transcript is of.
type jobFlags struct {
	job   extract.Job
	words []string
}

func (f *jobFlags) add(cmd *cobra.Command) {
	fs := cmd.Flags()
	fs.StringVar(&f.job.Title, "title", "", "title of the job")
	fs.StringVar(&f.job.Machine, "machine", "", "the machine that was worked on")
	fs.StringVar(&f.job.Year, "year", "", "its year")
	fs.StringVar(&f.job.Reading, "reading", "", "its odometer or hour meter at the time, with the unit")
	fs.StringVar(&f.job.Date, "date", "", "date of the job, 2026-05-01")
	fs.StringVar(&f.job.VideoURL, "video-url", "", "address of the recording; {t} in it stands for the second, {clip} for the clip's number")
	fs.StringArrayVar(&f.words, "words", nil, "vocabulary file of your own, laid over the built-in one (may be repeated)")
}

// record reads the transcripts, the clips of one job in order, and says on
// standard error what was skipped.
func (f *jobFlags) record(ctx context.Context, cmd *cobra.Command, say sayer, paths []string) (*extract.Record, error) {
	if f.job.VideoURL != "" {
		if err := render.CheckVideoURL(f.job.VideoURL); err != nil {
			return nil, err
		}
	}
	if len(paths) > transcript.MaxClips {
		return nil, fmt.Errorf("%d files were given; a job may have %d clips", len(paths), transcript.MaxClips)
	}
	vocabulary := sync.OnceValues(func() (*lexicon.Lexicon, error) {
		if len(f.words) == 0 {
			return lexicon.Default(), nil
		}
		return lexicon.Load(f.words...)
	})
	go func() { _, _ = vocabulary() }() // while the files are read
	stdin := 0
	var clips []*transcript.Clip
	for _, p := range paths {
		if p == "-" {
			if stdin++; stdin > 1 {
				return nil, fmt.Errorf("standard input can be one clip only; it is named %d times", stdin)
			}
		}
		clip, err := transcript.ReadFile(ctx, p, limits(cmd))
		if errors.Is(err, transcript.ErrLimit) {
			return nil, fmt.Errorf("%w (--%s does)", err, largeFlag)
		}
		if err != nil {
			return nil, err
		}
		clips = append(clips, clip)
	}
	large := size(clips) > largeTalk
	if large {
		collectRarely(false)
	}
	talk := transcript.Join(clips...)
	if large {
		debug.FreeOSMemory() // what joining took is not needed again
	}
	for _, w := range talk.Warnings {
		say.warning("%s", place(w))
	}
	lex, err := vocabulary()
	if err != nil {
		return nil, fmt.Errorf("read the vocabulary: %w", err)
	}
	rec := extract.Extract(talk, lex, f.job)
	for _, n := range rec.Notes {
		if strings.Contains(n.Kind, "twice") || strings.Contains(n.Kind, "overlap") {
			say.warning("%s", n.Text)
		}
	}
	return rec, nil
}

// largeTalk is text beyond which memory counts more than a few milliseconds, in bytes.
const largeTalk = 1 << 18

// size is the text that the clips hold, in bytes.
func size(clips []*transcript.Clip) (n int) {
	for _, c := range clips {
		for i := range c.Cues {
			n += len(c.Cues[i].Text)
		}
	}
	return n
}

const largeFlag = "large"

// addLarge gives a command that reads transcripts the flag that raises their limits.
func addLarge(cmd *cobra.Command) {
	cmd.Flags().Bool(largeFlag, false, "read files beyond the usual limits of size, as far as memory goes; for files that you trust")
}

// limits are the options of reading that the flags ask for.
func limits(cmd *cobra.Command) transcript.Options {
	opt := transcript.Options{Stdin: cmd.InOrStdin()}
	if large, err := cmd.Flags().GetBool(largeFlag); err == nil && large {
		opt.MaxBytes, opt.MaxCues, opt.MaxWords = math.MaxInt32, math.MaxInt32, math.MaxInt32
	}
	return opt
}

func place(w transcript.Warning) string {
	if w.Line > 0 {
		return fmt.Sprintf("%s:%d: %s", w.File, w.Line, w.Text)
	}
	return w.File + ": " + w.Text
}
