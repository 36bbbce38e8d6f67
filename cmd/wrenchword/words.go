package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/sahilm/fuzzy"
	"github.com/spf13/cobra"

	"wrenchword/extract/lexicon"
)

func newWordsCmd() *cobra.Command {
	var own []string
	var check string
	cmd := &cobra.Command{
		Use:   "words [WORD…]",
		Short: "List the vocabulary, look a word up, or check a file of your own",
		Long: `words lists the vocabulary the talk is read with. With WORD it shows what that
name is taken for, and where it is not known, what is spelled most like it (exit
code 1). --check reads a vocabulary file of your own and names the first fault
with its line.`,
		Example: "  wrenchword words\n  wrenchword words breaker bar\n  wrenchword words --check mine.txt",
		RunE: func(cmd *cobra.Command, args []string) error {
			w := cmd.OutOrStdout()
			if check != "" {
				if len(args) > 0 {
					return fmt.Errorf("--check takes a file and no word")
				}
				before := len(lexicon.Default().Terms())
				lex, err := lexicon.Load(check)
				if err != nil {
					return err
				}
				fmt.Fprintf(w, "%s: no fault found; %s\n", check, count(len(lex.Terms())-before, "name added", "names added"))
				return nil
			}
			lex := lexicon.Default()
			if len(own) > 0 {
				var err error
				if lex, err = lexicon.Load(own...); err != nil {
					return err
				}
			}
			if len(args) == 0 {
				for _, t := range lex.Terms() {
					printTerm(w, t)
				}
				return nil
			}
			return lookUp(w, lex, strings.Join(args, " "))
		},
	}
	cmd.Flags().StringArrayVar(&own, "words", nil, "vocabulary file of your own to lay over the built-in one (may be repeated)")
	cmd.Flags().StringVar(&check, "check", "", "check a vocabulary file of your own and end")
	return cmd
}

func printTerm(w io.Writer, t *lexicon.Term) {
	how := ""
	switch {
	case t.Weak:
		how = "misheard, counts only beside another sure word"
	case t.Misheard:
		how = "misheard"
	case t.Soft:
		how = "counts where it is said which one, or worked on"
	case t.Said != t.Name:
		how = "also said"
	}
	fmt.Fprintf(w, "%s\t%s\t%s\t%s\n", t.Said, t.Name, t.Kind, strings.TrimSpace(how+" "+t.Note))
}

// near is how many names are offered for one that is not known.
const near = 5

func lookUp(w io.Writer, lex *lexicon.Lexicon, word string) error {
	folded := strings.Join(lexicon.Words(word), " ")
	forms := []string{}
	found := false
	for _, t := range lex.Terms() {
		forms = append(forms, t.Said)
		if t.Said == folded || t.Said == lexicon.Singular(folded) {
			printTerm(w, t)
			found = true
		}
	}
	if found {
		return nil
	}
	fmt.Fprintf(w, "%q is not known\n", word)
	// The scores of this matcher overflow for long patterns, so a long word is cut.
	short := []rune(folded)
	matches := fuzzy.Find(string(short[:min(len(short), 30)]), forms)
	for i, m := range matches {
		if i == near {
			break
		}
		fmt.Fprintf(w, "  perhaps %s\n", m.Str)
	}
	return errOpen
}
