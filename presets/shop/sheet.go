package shop

import (
	"runtime"
	"sync"

	"boothset/calc"
	"boothset/calc/spread"
	"boothset/calc/unit"
	"boothset/presets/question"
)

// Sheet is what a booth sets for each coat, stage, gun and weather band.
type Sheet struct {
	Booth *Booth
	Bands []Band
	Guns  []SheetGun
}

// SheetGun is the rows of a gun.
type SheetGun struct {
	ID, Name string
	Rows     []SheetRow
}

// SheetRow is a stage of a coat, with a cell a band.
type SheetRow struct {
	Coat, CoatName, Stage string
	Cells                 []SheetCell
}

// SheetCell is what is set on a band's day.
type SheetCell struct {
	Worked  Values // by the model, on the band's own day
	Stopped bool   // the day is one that nothing is set on: Worked says nothing
	// Spread is how sure the worked values are, nil where they are not.
	Spread *spread.Spread
	// Agreed is what was agreed on, several where that was agreed twice apart; Void: the booth
	// has changed since.
	Agreed []*Setting
	Void   bool
}

// Set is what is to be set: what was agreed where it stands, else what was worked out.
func (c *SheetCell) Set() (v Values, agreed bool) {
	if len(c.Agreed) == 1 && !c.Void {
		return c.Agreed[0].Values.Or(c.Worked), true // what was agreed leaves the rest as it is worked out
	}
	return c.Worked, false
}

// SheetOf works out the sheet of a booth for guns and coats, by ids of the reader's catalogue,
// with how sure each is where sure is set. The reader has the booth's answers. What the booth
// leaves open comes as a fault of the question.
func (f *Folder) SheetOf(r *question.Reader, b *Booth, guns, coats []string, sure bool) (*Sheet, []*Fault, error) {
	s := &Sheet{Booth: b}
	bands, faults := f.Bands()
	s.Bands = bands
	settings, more := f.Settings(b.ID)
	faults = append(faults, more...)
	standing := Standing(settings)
	var todo []*cellWork
	for _, gun := range guns {
		g := SheetGun{ID: gun, Name: r.Called(question.Gun, question.Value{ID: gun})}
		for _, coat := range coats {
			if !r.GoTogether(coat, gun) {
				continue
			}
			rows, work, err := s.rows(r, standing, coat, gun)
			if err != nil {
				return nil, faults, err
			}
			g.Rows, todo = append(g.Rows, rows...), append(todo, work...)
		}
		s.Guns = append(s.Guns, g)
	}
	workAll(todo, sure)
	return s, faults, nil
}

// cellWork is a cell that is yet to be worked out.
type cellWork struct {
	cell *SheetCell
	q    *calc.Request
}

// rows is the rows of a coat with a gun, one a stage, and their cells to be worked out.
func (s *Sheet) rows(r *question.Reader, standing []*Setting, coat, gun string) (rows []SheetRow, todo []*cellWork, err error) {
	for n, band := range s.Bands {
		q, err := bandRequest(r, coat, gun, &s.Bands[n])
		if err != nil {
			return nil, nil, err
		}
		for i := range q.Stages {
			if n == 0 {
				rows = append(rows, SheetRow{Coat: coat, CoatName: q.Coat.Name, Stage: q.Stages[i].Stage.ID, Cells: make([]SheetCell, len(s.Bands))})
			}
			of := q.At(i)
			cell := &rows[i].Cells[n]
			cell.Agreed = For(standing, Subject{coat, q.Stages[i].Stage.ID, gun, band.ID})
			for _, a := range cell.Agreed {
				cell.Void = cell.Void || Void(a.Since(of))
			}
			todo = append(todo, &cellWork{cell, of})
		}
	}
	return rows, todo, nil
}

// bandRequest is the job of a coat with a gun on a band's own day.
func bandRequest(r *question.Reader, coat, gun string, b *Band) (*calc.Request, error) {
	a := b.Day().With(question.Coat, question.Value{ID: coat, Text: coat}).With(question.Gun, question.Value{ID: gun, Text: gun})
	q, faults := r.Plan(a, unit.US)
	if len(faults) > 0 {
		return nil, faults[0]
	}
	return q, nil
}

// workAll works out cells, on each processor some of them.
func workAll(todo []*cellWork, sure bool) {
	all := runtime.GOMAXPROCS(0)
	var workers sync.WaitGroup
	for w := range all {
		workers.Go(func() {
			for i := w; i < len(todo); i += all {
				todo[i].work(sure)
			}
		})
	}
	workers.Wait()
}

// work works out a cell. A job that cannot be worked out is one that nothing is set on: a plan
// of it says why.
func (c *cellWork) work(sure bool) {
	setup, err := calc.Solve(c.q)
	if c.cell.Stopped = err != nil || setup.Stopped(); c.cell.Stopped {
		return
	}
	c.cell.Worked = Answered(c.q, setup)
	if sure {
		c.cell.Spread = spread.Of(c.q, setup)
	}
}
