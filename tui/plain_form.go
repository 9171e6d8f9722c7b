package tui

// form asks the fields of a page one by one and says its answer.
func (p *dialogue) form(f *form) error {
	p.answered = true
	p.row("")
	p.say(f.title())
	p.say(p.r.s.say("plain-page"))
	for f.at = 0; f.at < len(f.all); {
		if on, err := p.box(f, &f.all[f.at]); err != nil || !on {
			return err
		}
		if f.onAnswer() && f.blamed() >= 0 {
			p.wrong(f.wrong())
			f.at = f.blamed()
		}
	}
	p.answer(f)
	back(p.r)
	return nil
}

// answer says what a page comes to.
func (p *dialogue) answer(f *form) {
	s := p.r.s
	switch {
	case f.err != nil:
		p.wrong(f.wrong())
		return
	case f.answer.Stopped():
		p.say(s.say("form-stopped"))
	default:
		p.say(s.say("form-answer"))
	}
	p.paragraphs(f.lines(plainWidth))
}

// box asks a field of a page until it is left; on is false where the page is, too.
func (p *dialogue) box(f *form, b *box) (on bool, err error) {
	s := p.r.s
	rows := wrap(f.label(b)+": "+f.usage(b), plainWidth)
	if b.choices != nil { // the list says what it is for
		rows = append([]string{f.label(b) + ":"}, numbered(b.choices)...)
	}
	if f.read != s.sys {
		rows = append(rows, wrap(s.say("form-units"), plainWidth)...)
	}
	p.paragraphs(rows)
	for {
		if v, _ := f.value(b); v != "" {
			p.offer(v)
		}
		text, err := p.read(f.label(b), rows)
		had, of := b.typed, b.picked
		switch {
		case err != nil:
			return false, err
		case text == plainQuit:
			leave(p.r)
			return false, nil
		case text == plainBack && f.at == 0:
			back(p.r)
			return false, nil
		case text == plainBack:
			f.last("")
			return true, nil
		case text == plainUnits:
			f.changeUnits("")
			p.row(s.unitsName())
			continue
		case text == plainClear:
			b.clear()
			continue
		case text == plainAnswer:
			f.solve()
			f.at = len(f.all)
			return true, nil
		case text != "" && !b.put(text):
			p.noSuch(len(b.choices))
			continue
		}
		if f.leave() {
			f.at++
			return true, nil
		}
		p.wrong(f.wrong())
		b.typed, b.picked = had, of
	}
}
