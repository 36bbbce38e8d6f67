package shelf

import (
	_ "embed"
	"html/template"
	"slices"
	"strings"

	"wrenchword/render/page"
)

var (
	//go:embed assets/shelf.html
	shelfHTML string
	//go:embed assets/shelf.css
	shelfCSS string
	//go:embed assets/shelf.js
	shelfJS string
)

var shelfTemplate = page.Template(shelfHTML, template.FuncMap{
	"lower": strings.ToLower,
})

// view is what one of the overview pages shows.
type view struct {
	Kind     string // "index", "open", "values"
	Title    string
	Jobs     []Job
	Machines []machine
	Faults   []Fault
	Open     int
	Later    int
}

// machine is one machine of one year with the jobs whose values are confirmed.
type machine struct {
	Name, Year string
	Jobs       []Job
}

// overview writes the three pages over all jobs.
func (b *build) overview() error {
	v := view{Faults: b.res.Faults}
	for _, j := range b.now {
		v.Jobs = append(v.Jobs, j.Job)
		v.Open += len(j.Job.Open)
		v.Later += len(j.Job.Later)
	}
	slices.SortFunc(v.Jobs, func(x, y Job) int {
		if c := strings.Compare(strings.ToLower(x.Title), strings.ToLower(y.Title)); c != 0 {
			return c
		}
		return strings.Compare(x.Path, y.Path)
	})
	v.Machines = machines(v.Jobs)
	for _, p := range []struct{ kind, file, title string }{
		{"index", "index.html", "Jobs on this shelf"},
		{"open", "open-ends.html", "Open ends of all jobs"},
		{"values", "confirmed-values.html", "Confirmed values by machine and year"},
	} {
		v.Kind, v.Title = p.kind, p.title
		data, err := page.Draw(shelfTemplate(), shelfCSS, shelfJS, false, v)
		if err != nil {
			return err
		}
		// An edit to one of these is told as any other's, and fails nothing else.
		if err := b.to.Publish(p.file, data, b.opt.Replace); err != nil {
			b.fault(p.file, err)
		}
	}
	return nil
}

// machines groups jobs with confirmed values by machine and year. A job that
// names no machine, or no year, stands in a group that says so, at the end.
func machines(jobs []Job) []machine {
	at := map[[2]string]int{}
	var out []machine
	for _, j := range jobs {
		if len(j.Values) == 0 {
			continue
		}
		key := [2]string{strings.ToLower(strings.Join(strings.Fields(j.Machine), " ")), strings.TrimSpace(j.Year)}
		i, ok := at[key]
		if !ok {
			i = len(out)
			at[key] = i
			out = append(out, machine{Name: strings.TrimSpace(j.Machine), Year: key[1]})
		}
		out[i].Jobs = append(out[i].Jobs, j)
	}
	slices.SortStableFunc(out, func(x, y machine) int {
		if (x.Name == "") != (y.Name == "") {
			if x.Name == "" {
				return 1
			}
			return -1
		}
		if c := strings.Compare(strings.ToLower(x.Name), strings.ToLower(y.Name)); c != 0 {
			return c
		}
		return strings.Compare(x.Year, y.Year)
	})
	return out
}
