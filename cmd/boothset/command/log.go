package command

import (
	"encoding/csv"
	"fmt"
	"maps"
	"slices"
	"strings"
	"time"

	"boothset/calc/unit"
	"boothset/presets/shop"

	"github.com/spf13/cobra"
)

// logs is the command that lists the log.
func (p *Program) logs() *cobra.Command {
	var a jsonAsked
	var booth string
	var asCSV bool
	c := &cobra.Command{
		Use: commandLog, Short: p.local.Say("brief-log"), Args: p.noArgs,
		RunE: func(*cobra.Command, []string) error { return p.listLog(booth, asCSV, &a) },
	}
	p.boothFlag(c, &booth)
	c.Flags().BoolVar(&asCSV, flagCSV, false, "usage-csv")
	a.jsonFlags(c)
	c.AddCommand(p.record(), p.outcome())
	return c
}

// flagCSV is the flag of a table for a spreadsheet.
const flagCSV = "csv"

func (p *Program) listLog(booth string, asCSV bool, a *jsonAsked) error {
	l := logList{}
	var err error
	if l.shopOpened, err = p.openShop(); err != nil {
		return err
	}
	if err := a.checkFields(commandLog, l.words); err != nil {
		return err
	}
	if asCSV && a.asJSON {
		return &fieldError{flagCSV, "", l.words.Say("want-not-json")}
	}
	ids, err := l.chosen(booth, l.folder.LoggedBooths())
	if err != nil {
		return err
	}
	var faults []*shop.Fault
	l.painters, faults = l.folder.Painters()
	l.tell(faults...)
	l.jobs = l.jobsOf(ids)
	text := l.text
	if asCSV {
		text = l.csv
	}
	p.answerShop(&l.shopOpened, a, commandLog, false, text, l.json)
	return nil
}

// jobsOf is the jobs in the logs of booths, those of a booth together.
func (s *shopOpened) jobsOf(ids []string) (jobs []*shop.Record) {
	for _, id := range ids {
		log, faults := s.folder.Log(id)
		s.tell(faults...)
		jobs = append(jobs, shop.Jobs(log)...)
	}
	return jobs
}

// logList is the jobs of a log on their way out.
type logList struct {
	shopOpened
	jobs     []*shop.Record
	painters shop.Painters
}

// painter is who did a job: initials where the shop keeps them, else the id.
func (l *logList) painter(r *shop.Record) string { return l.painters.Called(r.Painter) }

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
		cells := []string{r.At.Local().Format("2006-01-02 15:04"), r.ID[:min(shownID, len(r.ID))], r.Booth, r.Coat, r.Stage, r.Gun}
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

// shownID is how much of a job's id is shown: its time to the millisecond.
const shownID = 13

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

func (l *logList) json(j *jsonWriter) {
	j.array("jobs", func() {
		for _, r := range l.jobs {
			j.object("", func() { l.job(j, r) })
		}
	})
}

// job is a job of the log with what was said of it later.
func (l *logList) job(j *jsonWriter, r *shop.Record) {
	j.text("schema", schema(commandRecord))
	j.text("id", r.ID)
	j.text("at", r.At.UTC().Format(time.RFC3339))
	j.text("booth", r.Booth)
	appendSubject(j, r.Subject)
	appendTexts(j, "asked", r.Asked)
	appendValues(j, "said", &r.Answered)
	appendValues(j, "set", &r.Set)
	appendValues(j, "read", &r.Read)
	j.array("outcome", func() {
		for _, o := range r.Outcome {
			j.text("", string(o))
		}
	})
	j.text("then", string(r.Then))
	j.text("painter", l.painter(r))
	j.text("note", r.Note)
}

// appendValues is the values that were said, in both systems of units.
func appendValues(j *jsonWriter, key string, v *shop.Values) {
	j.object(key, func() {
		v.Each(func(key string, q *unit.Quantity, si float64) {
			switch q {
			case unit.Share:
				j.number(key, si)
			case unit.Tip:
				j.near(key, unit.Length(si))
			default:
				quantity(j, key, q, si)
			}
		})
	})
}

// appendTexts is texts by the field that they answer, as a request spells it.
func appendTexts(j *jsonWriter, key string, texts map[string][]string) {
	j.object(key, func() {
		for _, f := range slices.Sorted(maps.Keys(texts)) {
			j.array(strings.ReplaceAll(f, "-", "_"), func() {
				for _, t := range texts[f] {
					j.text("", t)
				}
			})
		}
	})
}
