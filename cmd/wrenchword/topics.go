package main

import (
	_ "embed"

	"github.com/spf13/cobra"
)

//go:embed topics/exit-codes.txt
var topicExitCodes string

//go:embed topics/vocabulary.txt
var topicVocabulary string

//go:embed topics/document.txt
var topicDocument string

//go:embed topics/safety.txt
var topicSafety string

//go:embed topics/licences.txt
var topicLicences string

// topics are the longer matters of `wrenchword help`. A command with no Run is
// listed by cobra as a help topic.
func topics() []*cobra.Command {
	return []*cobra.Command{
		{Use: "exit-codes", Short: "What each exit code means", Long: topicExitCodes},
		{Use: "vocabulary", Short: "How to add words of your own", Long: topicVocabulary},
		{Use: "document", Short: "The working document and what you may do in it", Long: topicDocument},
		{Use: "licences", Short: "The libraries in this program and their licences", Long: topicLicences},
		{Use: "safety", Short: "What a heard value is worth", Long: topicSafety},
	}
}
