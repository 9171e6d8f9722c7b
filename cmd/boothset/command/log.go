package command

import (
	"encoding/csv"
	"fmt"
	"strings"
	"time"

	"boothset/calc/unit"
	"boothset/presets/shop"

	"github.com/spf13/cobra"
)

// logs is the command that lists the log.
func (p *Program) logs() *cobra.Command {
	var booth string
	var asCSV, asJSON bool
	c := &cobra.Command{
		Use: commandLog, Short: p.local.Say("brief-log"), Args: p.noArgs,
		RunE: func(*cobra.Command, []string) error { return p.listLog(booth, asCSV, asJSON) },
	}
	p.boothFlag(c, &booth)
	c.Flags().BoolVar(&asCSV, "csv", false, "usage-csv")
	c.Flags().BoolVar(&asJSON, flagJSON, false, "usage-json")
	return c
}

func (p *Program) listLog(booth string, asCSV, asJSON bool) error {
	s, err := p.openShop()
	if err != nil {
		return err
	}
	ids := s.folder.LoggedBooths()
	if booth != "" {
		if !shop.IsID(booth) {
			return &fieldError{flagBooth, booth, s.words.Choose(ids)}
		}
		ids = []string{booth}
	}
	painters, faults := s.folder.Painters()
	var jobs []*shop.Record
	for _, id := range ids {
		log, wrong := s.folder.Log(id)
		jobs, faults = append(jobs, shop.Jobs(log)...), append(faults, wrong...)
	}
	l := logList{s, jobs, painters}
	var out []byte
	switch {
	case asJSON:
		out = l.json(faults)
	case asCSV:
		out = l.csv()
	default:
		out = l.text()
	}
	if !asJSON {
		p.warn(s.words, faults)
	}
	p.code = p.write(s.words, out, false)
	return nil
}

// logList is the jobs of a log on their way out.
type logList struct {
	shopOpened
	jobs     []*shop.Record
	painters shop.Painters
}

// painter is who did a job: initials where the shop keeps them, else the id.
func (l *logList) painter(r *shop.Record) string {
	if initials := l.painters[r.Painter]; initials != "" {
		return initials
	}
	return r.Painter
}

// outcome is how a job came out, in words.
func (l *logList) outcome(r *shop.Record) string {
	said := make([]string, 0, len(r.Outcome)+1)
	for _, o := range r.Outcome {
		said = append(said, o.In(l.words))
	}
	if r.Then != "" && r.Then != shop.Nothing {
		said = append(said, r.Then.In(l.words))
	}
	return strings.Join(said, ", ")
}

// text is a job a line.
func (l *logList) text() []byte {
	var b strings.Builder
	for _, r := range l.jobs {
		cells := []string{r.At.Local().Format("2006-01-02 15:04"), r.Booth, r.Coat, r.Stage, r.Gun}
		for _, v := range []struct {
			id string
			of *shop.Values
		}{{"log-said", &r.Answered}, {"log-set", &r.Set}, {"log-read", &r.Read}} {
			if v.of.Wall > 0 {
				cells = append(cells, l.words.Say(v.id)+" "+unit.Pressure.Text(l.sys, float64(v.of.Wall), unit.Pressure.Fine(l.sys)))
			}
		}
		cells = append(cells, l.outcome(r), l.painter(r), r.Note)
		fmt.Fprintln(&b, strings.Join(present(cells), "  "))
	}
	if len(l.jobs) == 0 {
		fmt.Fprintln(&b, l.words.Say("log-empty"))
	}
	return []byte(b.String())
}

func present(cells []string) (some []string) {
	for _, c := range cells {
		if c != "" {
			some = append(some, c)
		}
	}
	return some
}

// csv is the log as a table for a spreadsheet, with a head. Numbers are in the system's units,
// which the head names; a text that a spreadsheet would take for a formula is quoted as text.
func (l *logList) csv() []byte {
	var b strings.Builder
	w := csv.NewWriter(&b)
	head := []string{"at", "booth", "id", "coat", "stage", "gun", "band"}
	for _, of := range []string{"said", "set", "read"} {
		head = append(head, shop.Heads(of, l.sys)...)
	}
	rows := [][]string{append(head, "outcome", "then", "painter", "note")}
	for _, r := range l.jobs {
		var outcome []string
		for _, o := range r.Outcome {
			outcome = append(outcome, string(o))
		}
		row := []string{r.At.UTC().Format(time.RFC3339), cell(r.Booth), cell(r.ID), cell(r.Coat), cell(r.Stage), cell(r.Gun), cell(r.Band)}
		for _, v := range []*shop.Values{&r.Answered, &r.Set, &r.Read} {
			row = append(row, v.Cells(l.sys)...)
		}
		rows = append(rows, append(row, cell(strings.Join(outcome, " ")), cell(string(r.Then)), cell(l.painter(r)), cell(r.Note)))
	}
	w.WriteAll(rows) //nolint:errcheck // into memory
	return []byte(b.String())
}

// cell is a text of a cell: one that a spreadsheet would work out begins with a quote.
func cell(t string) string {
	if t != "" && strings.ContainsRune("=+-@\t\r", rune(t[0])) {
		return "'" + t
	}
	return t
}

func (l *logList) json(faults []*shop.Fault) []byte {
	j := jsonWriter{fresh: true}
	values := func(key string, v *shop.Values) {
		j.object(key, func() {
			v.Each(func(key string, q *unit.Quantity, si float64) {
				switch q {
				case unit.Share:
					j.number(key, si)
				case unit.Tip:
					j.near(key, unit.Length(si))
				default:
					quantity(&j, key, q, si)
				}
			})
		})
	}
	j.object("", func() {
		j.text("schema", schema(commandLog))
		j.array("jobs", func() {
			for _, r := range l.jobs {
				j.object("", func() {
					j.text("id", r.ID)
					j.text("at", r.At.UTC().Format(time.RFC3339))
					j.text("booth", r.Booth)
					j.text("coat", r.Coat)
					j.text("stage", r.Stage)
					j.text("gun", r.Gun)
					j.text("band", r.Band)
					values("said", &r.Answered)
					values("set", &r.Set)
					values("read", &r.Read)
					j.array("outcome", func() {
						for _, o := range r.Outcome {
							j.text("", string(o))
						}
					})
					j.text("then", string(r.Then))
					j.text("painter", l.painter(r))
					j.text("note", r.Note)
				})
			}
		})
		appendFaults(&j, l.words, faults)
	})
	return append(j.b, '\n')
}
