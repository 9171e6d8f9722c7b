package tui

import (
	"fmt"
)

// entry asks the fields of a page one by one, and takes them.
func (p *dialogue) entry(page *entryPage) error {
	p.answered = page.from != nil
	p.row("")
	p.say(page.ask())
	if page.over != nil {
		p.paragraphs(page.over(plainWidth))
	}
	for page.at = 0; page.at < len(page.all); {
		b := &page.all[page.at]
		on, err := p.entryBox(page, b)
		if err != nil || p.r.done {
			return err
		}
		switch {
		case on && page.enough != nil && page.enough():
			page.at = len(page.all)
		case on:
			page.at++
		case page.at == 0:
			back(p.r)
			return nil
		default:
			page.at--
		}
		if page.at == len(page.all) {
			m, fault := page.take()
			if fault == "" {
				m(p.r)
				if fault = page.fault; fault == "" {
					return nil
				}
			}
			p.wrong(fault)
			if page.at == len(page.all) { // it says of none of them
				page.at = 0
			}
		}
	}
	return nil
}

// entryBox asks a field; on is false where the one before is to be asked.
func (p *dialogue) entryBox(page *entryPage, b *box) (on bool, err error) {
	rows := wrap(page.label(b)+": "+page.isFor(b), plainWidth)
	if b.choices != nil {
		rows = append(rows, numbered(b.choices)...)
	}
	p.paragraphs(rows)
	for {
		if v, _ := page.value(b); v != "" {
			if b.choices != nil {
				v = fmt.Sprintf("%d %s", b.picked+1, v)
			}
			p.offer(v)
		}
		text, err := p.read(page.label(b), rows)
		switch {
		case err != nil:
			return false, err
		case text == plainQuit:
			leave(p.r)
			return false, nil
		case text == plainBack:
			return false, nil
		case text == plainClear && b.choices == nil:
			b.clear()
			continue
		case text != "" && !b.put(text):
			p.noSuch(len(b.choices))
			continue
		}
		return true, nil
	}
}
