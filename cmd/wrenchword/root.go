package main

import (
	"fmt"

	"github.com/spf13/cobra"
)

// newRootCmd builds the whole tree of commands. It keeps no state outside it.
func newRootCmd() *cobra.Command {
	root := &cobra.Command{
		Use:   "wrenchword",
		Short: "From a talked-through repair to a procedure, open questions and a tightening round",
		Long: `wrenchword reads the timed transcript of a recording in which somebody works on a
machine and talks. It writes the procedure, what is still open and a table of
what must be tightened, each line with the second where it was said. You fill in
what you find, tick what you finish, and ask what still stands before the
machine is used.

Nothing is invented, and no check can make a heard value right: the maker's
manual and local rules stand above everything written here.

Standard output is data, standard error is talk.`,
		Args:          cobra.NoArgs,
		SilenceUsage:  true,
		SilenceErrors: true,
		RunE: func(cmd *cobra.Command, _ []string) error {
			cmd.SetOut(cmd.ErrOrStderr())
			if err := cmd.Help(); err != nil {
				return err
			}
			return fmt.Errorf("name a command, for example: wrenchword procedure clip.vtt -o job.md")
		},
	}
	root.PersistentFlags().BoolP("quiet", "q", false, "say nothing on standard error but what went wrong")
	root.PersistentFlags().Bool("no-color", false, "no colour in messages (NO_COLOR does the same)")
	root.AddCommand(
		newProcedureCmd(), newReadyCmd(), newSettleCmd(), newPublishCmd(), newShelfCmd(),
		newQuantitiesCmd(), newReckonCmd(), newWordsCmd(), newWhenceCmd(),
	)
	root.AddCommand(topics()...)
	return root
}
