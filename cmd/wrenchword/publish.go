package main

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"wrenchword/extract"
	"wrenchword/render/page"
	"wrenchword/render/workdoc"
)

// published are the forms of a page with the endings of their files.
var published = map[string]struct {
	ending string
	draw   func(*page.Page) ([]byte, error)
}{
	"html":      {".html", (*page.Page).HTML},
	"markdown":  {".md", (*page.Page).Markdown},
	"mediawiki": {".wiki", (*page.Page).MediaWiki},
}

func newPublishCmd() *cobra.Command {
	var to, as string
	var videos, photos []string
	var settledOnly, anyway, replace bool
	cmd := &cobra.Command{
		Use:   "publish FILE… --to DIR",
		Short: "Write the page of a job for a wiki or a phone",
		Long: `publish writes one page for each working document: HTML in one file that asks for
nothing when it is opened, or wiki text. What is not settled comes first, and a
value that nobody confirmed says so in words.

A document in which something is open before publishing is refused without
--anyway. A page that was edited since it was published is not written over
without --replace.`,
		Example: "  wrenchword publish job.md --to wiki\n  wrenchword publish job.md --to wiki --as mediawiki --settled-only",
		Args:    cobra.MinimumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			say := newSayer(cmd)
			form, ok := published[as]
			if !ok {
				return fmt.Errorf("--as %s is not known; use html, markdown or mediawiki", as)
			}
			folder, err := page.OpenFolder(to)
			if err != nil {
				return err
			}
			defer folder.Close()
			if len(videos)+len(photos) > 0 {
				switch {
				case as != "html":
					return errors.New("--video and --photo put pictures into an HTML page; leave out --as " + as)
				case len(args) > 1:
					return errors.New("--video and --photo belong to one document; name one")
				}
			}
			refused := false
			taken := map[string]bool{}
			for _, path := range args {
				doc, _, err := document(cmd, say, path)
				if err != nil {
					return err
				}
				name := page.SafeName(path, taken) + form.ending
				open := workdoc.Ready(doc, extract.BeforePublishing, workdoc.CheckConfirmed, today()).Open
				if len(open) > 0 && !anyway {
					refused = true
					say.warning("%s: not published: %s before publishing, the first: %s; settle them or give --anyway",
						path, count(len(open), "thing stands open", "things stand open"), open[0].Text)
					continue
				}
				opt := page.Options{SettledOnly: settledOnly, Today: today()}
				if opt.Stills, err = pictures(cmd, say, doc, videos, photos); err != nil {
					return err
				}
				data, err := form.draw(page.New(doc, opt))
				if err != nil {
					return fmt.Errorf("%s: draw the page: %w", path, err)
				}
				if err := folder.Publish(name, data, replace); err != nil {
					refused = true
					say.warning("%s: %v", path, advised(err))
					continue
				}
				fmt.Fprintln(cmd.OutOrStdout(), name)
			}
			if refused {
				return errOpen
			}
			return nil
		},
	}
	fs := cmd.Flags()
	fs.StringVar(&to, "to", "", "folder to write into")
	fs.StringArrayVar(&videos, "video", nil, "recording to take stills from through ffmpeg, once a clip in order")
	fs.StringArrayVar(&photos, "photo", nil, "photograph of your own to add, without its location (may be repeated)")
	fs.StringVar(&as, "as", "html", "html, markdown or mediawiki")
	fs.BoolVar(&settledOnly, "settled-only", false, "leave out every value that nobody confirmed, and say so")
	fs.BoolVar(&anyway, "anyway", false, "publish although something is open before publishing")
	fs.BoolVar(&replace, "replace", false, "write over a page that was edited since it was published")
	if err := cmd.MarkFlagRequired("to"); err != nil {
		panic(err) // the flag is defined just above
	}
	return cmd
}

// pictures takes stills and adds the person's own photographs. What cannot be
// taken is said and fails nothing else.
func pictures(cmd *cobra.Command, say sayer, doc *workdoc.Document, videos, photos []string) ([]page.Still, error) {
	var out []page.Still
	if len(videos) > 0 {
		bar := newBar(cmd, say)
		stills, err := page.Frames(cmd.Context(), doc, videos, bar.set)
		bar.end()
		if err != nil {
			say.warning("%v", err)
		}
		out = stills
	}
	for _, p := range photos {
		s, err := page.Photo(p)
		if err != nil {
			return nil, err
		}
		out = append(out, s)
	}
	if len(out) > 0 {
		say.note("look for faces, number plates and frame numbers in %s before you pass the page on", count(len(out), "picture", "pictures"))
	}
	return out, nil
}
