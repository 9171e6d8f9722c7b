package tui

import (
	"cmp"
	"slices"
	"strings"
	"time"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/card"
	"boothset/presets/catalogue"
	"boothset/presets/shop"
)

// agreedToday is what was agreed on against an answer, worked out once for each.
type agreedToday struct {
	tried   int // the answer's id
	changes int // of the shop's folder
	today   *card.Today
}

// today is what was agreed on in the booth against the answer that shows, nil in no booth.
func (b *bench) today() *card.Today {
	d := &b.s.desk
	if d.booth == nil || b.err != nil {
		return nil
	}
	if a := &b.agreed; a.today == nil || a.tried != b.tried.id || a.changes != d.changes {
		plan := b.tried.Plan
		*a = agreedToday{b.tried.id, d.changes, card.TodayIn(d.holds.bands, d.agreed, &plan)}
	}
	return b.agreed.today
}

// agreedRow is what was agreed on in the row under the verdict; false where nothing was.
func (b *bench) agreedRow() (row secondRow, standing bool) {
	t := b.today()
	if t == nil || len(t.Standing) == 0 {
		return secondRow{}, false
	}
	th := b.s.theme
	row = secondRow{mark: agreedKey + " ", style: th.Caption, pressing: true}
	if len(t.Standing) > 1 || shop.Void(t.Changes) {
		row.style = th.level[calc.Warn]
	}
	var texts, grave []string
	for _, r := range t.Rows(b.s.words, b.s.sys) {
		texts = append(texts, r.Text)
		if r.ID == "agreed-void" {
			grave = append(grave, r.Text)
		}
	}
	if len(grave) > 0 { // what makes it void comes before why it is another
		texts = append(texts[:1:1], grave...)
	}
	row.text = plain(strings.Join(texts, " "))
	return row, true
}

// agreedRows is what was agreed on against the answer that shows, and why they differ; none where
// nothing was.
func (b *bench) agreedRows(w int) (rows []string) {
	t := b.today()
	if t == nil || len(t.Standing) == 0 {
		return nil
	}
	return b.s.todayRows(t, w)
}

// todayRows is what was agreed on against an answer in rows.
func (s *session) todayRows(t *card.Today, w int) (rows []string) {
	for _, r := range t.Rows(s.words, s.sys) {
		text := plain(r.Text)
		switch {
		case r.ID == "agreed-void" || r.ID == "agreed-twins":
			rows = append(rows, each(hang("! ", text, w), s.theme.level[calc.Warn].Render)...)
		case r.Role == answer.Remark:
			rows = append(rows, hang("- ", text, w)...)
		default:
			rows = append(rows, each(wrap(text, w), s.theme.Title.Render)...)
		}
	}
	return rows
}

// The fields of the page that agrees on a setting.
const (
	agreeBand  = "agree-band"
	agreeStage = "agree-stage"
	agreeGun   = "agree-gun"
	agreeBy    = "agree-by"
	agreeWhy   = "agree-why"
)

// newAgreePage is the page over the answer that agrees on what it shows.
func newAgreePage(s *session, from *bench) *entryPage {
	p := newEntryPage(s, "agree", "agree-title", "do-agree")
	p.from, p.tab, p.words = from, p, "agreed"
	p.fill = func() { p.all = from.agreeBoxes(p.all) }
	p.refresh = func() { p.fill(); p.at = min(p.at, len(p.all)-1) }
	p.over = func(w int) []string { return from.agreeOver(p.subject(from), w) }
	p.take = func() (move, string) { return from.agree(p) }
	return p
}

// agreeBoxes is the fields of the page, with what was typed and picked in those before.
func (b *bench) agreeBoxes(had []box) []box {
	s, q := b.s, b.tried.Request
	of := shop.SubjectOf(q, s.desk.holds.bands)
	any := choiceOf(shop.Any, s.say("agree-any"))
	band := shop.BandNamed(s.desk.holds.bands, of.Band)
	bands := []catalogue.Choice{any}
	if of.Band != "" {
		bands = []catalogue.Choice{choiceOf(band.ID, band.Called(s.words)), any}
	}
	all := []box{
		entryBox(agreeBand, bands),
		entryBox(agreeStage, []catalogue.Choice{choiceOf(of.Stage, b.tried.StageName(s.words)), any}),
		entryBox(agreeGun, []catalogue.Choice{choiceOf(of.Gun, q.Gun.Name), any}),
	}
	if who := s.painterChoices(); who != nil {
		all = append(all, entryBox(agreeBy, who))
	}
	all = append(all, entryBox(agreeWhy, nil))
	for i := range all {
		for _, was := range had {
			switch {
			case was.Name != all[i].Name:
			case was.choices == nil:
				all[i].typed = was.typed
			default:
				all[i].picked = max(all[i].choice(was.own()), 0)
			}
		}
	}
	return all
}

// painterChoices is who may be named, by initials, first nobody; none where the shop keeps no
// painters.
func (s *session) painterChoices() (all []catalogue.Choice) {
	painters := s.desk.holds.painters
	if len(painters) == 0 {
		return nil
	}
	for id, initials := range painters {
		all = append(all, choiceOf(id, initials))
	}
	slices.SortFunc(all, func(a, b catalogue.Choice) int {
		return cmp.Or(strings.Compare(a.Name, b.Name), strings.Compare(a.ID, b.ID))
	})
	return append([]catalogue.Choice{choiceOf(pickOther, s.say("desk-painter-none"))}, all...)
}

// subject is what the setting is agreed on for, as it is picked.
func (p *entryPage) subject(from *bench) shop.Subject {
	return shop.Subject{Coat: from.tried.Request.Coat.ID, Stage: p.text(agreeStage), Gun: p.text(agreeGun), Band: p.text(agreeBand)}
}

// agreeOver is what stands for the job, who agreed on it and why, and what of that agreeing for a
// subject takes the place of.
func (b *bench) agreeOver(of shop.Subject, w int) (rows []string) {
	s, t := b.s, b.today()
	rows = s.todayRows(t, w)
	replaced := shop.Replaced(s.desk.agreed, of)
	for _, r := range t.Standing {
		if !slices.Contains(replaced, r) {
			rows = append(rows, hang("- ", s.agreedText("agree-stands", r), w)...)
		}
	}
	for _, r := range replaced {
		rows = append(rows, hang("- ", s.agreedText("desk-agree-replaces", r), w)...)
	}
	return rows
}

// agreedText is a setting that was agreed on, in a sentence of its wall, its day and its id, and
// behind it who agreed and why.
func (s *session) agreedText(id string, r *shop.Setting) string {
	text := s.text(id, calc.FigureOf("wall", calc.FigureGauge, r.Values.Wall), calc.TextFigure("date", r.Agreed.Local().Format(time.DateOnly)), calc.TextFigure("id", r.ID))
	if who := s.desk.holds.painters[r.By]; who != "" {
		text += " " + s.text("agree-who", calc.TextFigure("who", who))
	}
	if r.Why != "" {
		text += " " + s.text("agree-because", calc.TextFigure("why", r.Why))
	}
	return plain(text)
}

// agree keeps what shows as agreed on for what is picked.
func (b *bench) agree(p *entryPage) (move, string) {
	s := b.s
	if b.tried.Stopped() || b.tried.Setup.Short.Is {
		return nil, s.say("agree-stopped")
	}
	set := shop.SettingOf(s.desk.booth.ID, b.tried.Request, b.tried.Setup, s.desk.holds.bands)
	set.Subject, set.Agreed, set.Why = p.subject(b), s.now(), strings.TrimSpace(p.text(agreeWhy))
	if by := p.text(agreeBy); by != pickOther {
		set.By = by
	}
	sys := s.sys
	told := s.text("desk-agree-kept", calc.TextFigure("wall", unit.Pressure.Text(sys, float64(set.Values.Wall), unit.Usual)), calc.TextFigure("booth", s.desk.booth.Name))
	write := func(f *shop.Folder) (string, error) {
		_, err := f.Agree(set, sys)
		return told, err
	}
	for i := range p.all {
		if p.all[i].Name == agreeWhy {
			p.all[i].clear()
		}
	}
	return func(r *root) {
		back(r)
		r.toFolder("", write)
	}, ""
}
