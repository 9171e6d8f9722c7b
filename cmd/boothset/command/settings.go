package command

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"boothset/calc"
	"boothset/presets/answer"
	"boothset/presets/question"
	"boothset/presets/shop"

	"github.com/spf13/cobra"
)

// commandSettings is the command that lists what was agreed on.
const commandSettings = "settings"

// settingsAsked is the flags of the command as they were given.
type settingsAsked struct {
	jsonAsked
	booth string
	all   bool
}

func (p *Program) settings() *cobra.Command {
	a := &settingsAsked{}
	c := &cobra.Command{
		Use: commandSettings, Short: p.local.Say("brief-settings"), Args: p.noArgs,
		RunE: func(*cobra.Command, []string) error { return p.listSettings(a) },
	}
	p.boothFlag(c, &a.booth)
	c.Flags().BoolVar(&a.all, "all", false, "usage-all")
	a.jsonFlags(c)
	return c
}

// listedSetting is a setting in the list, with what is to be known of it.
type listedSetting struct {
	*shop.Setting
	called        string // its booth's name
	stands, twins bool
	changes       []shop.Change // of the booth since then
	unknown       error         // why it cannot be held to the booth
}

// settingList is what was agreed on, on its way out.
type settingList struct {
	shopOpened
	all      []listedSetting
	bands    []shop.Band
	painters shop.Painters
}

func (p *Program) listSettings(a *settingsAsked) error {
	l := settingList{}
	var err error
	if l.shopOpened, err = p.openShop(); err != nil {
		return err
	}
	if err := a.checkFields(commandSettings, l.words); err != nil {
		return err
	}
	ids, err := l.chosen(a.booth, l.folder.AgreedBooths())
	if err != nil {
		return err
	}
	if _, err := l.withGuns(); err != nil {
		return err
	}
	var faults []*shop.Fault
	l.bands, faults = l.folder.Bands()
	l.tell(faults...)
	l.painters, faults = l.folder.Painters()
	l.tell(faults...)
	for _, id := range ids {
		l.of(id, a.all)
	}
	p.answerShop(&l.shopOpened, &a.jsonAsked, commandSettings, false, l.text, l.json)
	return nil
}

// of adds the settings of a booth: those that stand, or all.
func (l *settingList) of(id string, all bool) {
	settings, faults := l.folder.Settings(id)
	b, more := l.folder.Booth(l.reader, id)
	l.tell(append(faults, more...)...)
	standing := shop.Standing(settings)
	twins := shop.Twins(standing)
	for _, s := range settings {
		x := listedSetting{Setting: s, called: id, stands: slices.Contains(standing, s)}
		if !x.stands && !all {
			continue
		}
		x.twins = x.stands && len(twins[s.Subject]) > 0
		if b != nil {
			x.called = b.Name
			x.changes, x.unknown = s.SinceIn(l.reader, b)
		}
		l.all = append(l.all, x)
	}
}

// text is a paragraph a setting.
func (l *settingList) text() []byte {
	var rows []answer.Row
	for i := range l.all {
		rows = append(rows, l.rows(&l.all[i])...)
	}
	if len(rows) == 0 {
		return []byte(l.words.Say("settings-none") + "\n")
	}
	return answer.Print(rows, answer.Width, l.words)
}

func (l *settingList) rows(x *listedSetting) []answer.Row {
	title := "settings-of"
	if !x.stands {
		title = "settings-replaced"
	}
	f := append(x.Called(l.reader, l.bands), calc.TextFigure("booth", x.called), calc.TextFigure("number", fmt.Sprintf("%04d", x.Number)))
	rows := []answer.Row{{Role: answer.Title, ID: title, Text: spoken(l.words, title, f...), Begins: true}}
	remark := func(id, text string) { rows = append(rows, answer.Row{Role: answer.Remark, ID: id, Text: text}) }
	say := func(id string, f ...calc.Figure) { remark(id, spoken(l.words, id, f...)) }
	remark("set", strings.Join(present(append(x.Values.Texts(l.words, l.sys), x.Knobs)), "; "))
	when := "card-agreed-on"
	if l.painters[x.By] != "" {
		when = "card-agreed-by"
	}
	agreed := spoken(l.words, when, calc.TextFigure("date", dateOf(x.Agreed)), calc.TextFigure("who", l.painters[x.By]))
	remark(when, strings.TrimSpace(agreed+" "+x.Why))
	if x.twins {
		say("agreed-twins")
	}
	if x.stands && x.unknown != nil {
		remark("shop-setting-unknown", x.unknown.Error())
	}
	for _, change := range x.changes {
		if !x.stands {
			break
		}
		id := "agreed-void"
		if change.Values {
			id = "agreed-older"
		}
		say(id, calc.TextFigure("was", change.Was.Text()), calc.TextFigure("is", change.Is.Text()))
	}
	return rows
}

// dateOf is the day of a time, here.
func dateOf(at time.Time) string { return at.Local().Format(time.DateOnly) }

// json is the settings, each as its file has it, with what is to be known of it.
func (l *settingList) json(j *jsonWriter) {
	j.array("settings", func() {
		for i := range l.all {
			x := &l.all[i]
			j.object("", func() {
				appendSetting(j, x.Setting, l.painters)
				j.bool("stands", x.stands)
				j.bool("twins", x.twins)
				j.bool("void", shop.Void(x.changes))
				appendChanges(j, x.changes)
			})
		}
	})
}

// appendSetting is a setting as its file has it; who agreed on it by initials where the shop
// keeps them.
func appendSetting(j *jsonWriter, s *shop.Setting, painters shop.Painters) {
	j.text("schema", "boothset.setting/1")
	j.text("id", s.ID)
	j.count("number", s.Number)
	j.text("booth", s.Booth)
	appendSubject(j, s.Subject)
	j.array("replaces", func() {
		for _, id := range s.Replaces {
			j.text("", id)
		}
	})
	j.text("agreed", s.Agreed.UTC().Format(time.RFC3339))
	j.text("by", painters.Called(s.By))
	j.text("why", s.Why)
	j.text("knobs", s.Knobs)
	appendValues(j, "set", &s.Values)
	w := &s.Worked
	j.object("worked", func() {
		if w.Air > 0 {
			j.temp(question.Temp.Name, w.Air)
			j.number(question.Humidity.Name, w.Humidity)
		}
		appendValues(j, "answer", &w.Answer)
		j.text(question.Gun.Name, w.Gun.Text())
		j.array("line", func() {
			for _, p := range w.Line {
				j.text("", p.Text())
			}
		})
	})
}

func appendSubject(j *jsonWriter, s shop.Subject) {
	j.text(question.Coat.Name, s.Coat)
	j.text(question.Stage.Name, s.Stage)
	j.text(question.Gun.Name, s.Gun)
	j.text(flagBand, s.Band)
}
