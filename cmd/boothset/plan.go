package main

import (
	"errors"
	"flag"
	"fmt"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets"
	"boothset/presets/words"
)

// answerFlags makes a flag of every field of answers.
func answerFlags(f *flag.FlagSet, a *presets.Answers) {
	text := func(to *presets.Typed, field, usage string) {
		f.Func(field, usage, func(s string) error { *to = presets.Typed(s); return nil })
	}
	text(&a.Coat, presets.FieldCoat, "`coat`, such as clear or metallic-base")
	text(&a.Gun, presets.FieldGun, "gun `class`: high-volume-low-pressure, reduced-pressure or high-pressure")
	text(&a.Temp, presets.FieldTemp, "booth air `temperature`, such as 75F or 24C")
	text(&a.Humidity, presets.FieldHumidity, "relative humidity in `percent`, such as 45")
	text(&a.Panel, presets.FieldPanel, "panel `temperature`; the air's where left out")
	text(&a.Altitude, presets.FieldAltitude, "`height` above the sea, such as 5000ft or 1500m")
	text(&a.Supply, presets.FieldSupply, "supply `pressure` at the regulator with the gun spraying, such as 90psi")
	f.Func(presets.FieldHose, "`length,bore` such as 25ft,3/8in; once more for a whip hose behind it", func(s string) error {
		a.Hose = append(a.Hose, presets.Typed(s))
		return nil
	})
	text(&a.Coupling, presets.FieldCoupling, "`coupling` at both ends and between hoses: large-bore, ordinary, slim or none")
	text(&a.Filter, presets.FieldFilter, "`filter` behind the regulator, or none")
	text(&a.Regulator, presets.FieldRegulator, "regulator `size`: none, 1/4in, 3/8in or 1/2in")
	text(&a.RegulatorAt, presets.FieldRegulatorAt, "`place` of the regulator: wall or gun (at its foot)")
	text(&a.Gauge, presets.FieldGauge, "`place` of the gun's gauge: handle, foot or none")
	text(&a.Wall, presets.FieldWall, "wall `pressure` as it stands now, trigger pulled: adds what it does to the gun")
	text(&a.Compressor, presets.FieldCompressor, "compressor's free `air`, such as 18cfm, or its motor, such as 5hp: checks whether the supply lasts")
	text(&a.Receiver, presets.FieldReceiver, "receiver's `volume`, such as 60gal or 200L")
	text(&a.CutIn, presets.FieldCutIn, "`pressure` at which the compressor starts; the supply where left out")
	text(&a.CutOut, presets.FieldCutOut, "`pressure` at which it stops; 30 psi above cut-in where left out")
	text(&a.Main, presets.FieldMain, "main from receiver to wall, `length,bore` such as 100ft,3/4in")
	f.Func(presets.FieldOther, "`air` another gun or tool draws, such as 10cfm or 10cfm,50%; repeatable", func(s string) error {
		a.Other = append(a.Other, presets.Typed(s))
		return nil
	})
	text(&a.SprayTime, presets.FieldSprayTime, "how `long` the panel is sprayed without a pause; 3 min where left out")
	text(&a.ReceiverTemp, presets.FieldReceiverTemp, "`temperature` of the air leaving the receiver; 10 C above the booth's where left out")
	text(&a.LineTemp, presets.FieldLineTemp, "`temperature` of the main where it is coldest; the booth's where left out")
	text(&a.Mark, presets.FieldMark, "`step` of the wall gauge that can be read; 1psi, or 0.05bar with metric units")
}

// systemOf reads the units answer; empty is the shop's own.
func systemOf(units string, c *presets.Catalogue) (unit.System, error) {
	switch units {
	case "":
		return c.System(), nil
	case "us":
		return unit.US, nil
	case "metric":
		return unit.Metric, nil
	}
	return 0, &presets.FieldError{Field: presets.FieldUnits, Given: units, Want: "choose us or metric"}
}

const planIntro = `boothset plan: what to set for one job, with reasons.

  boothset plan --coat clear --gun reduced-pressure --temp 75F --humidity 45 --supply 90psi

What is left out is the shop's usual line.
`

func runPlan(args []string, std stdio, getenv func(string) string) int {
	var a presets.Answers
	var units string
	var asJSON, batch bool
	f := flag.NewFlagSet("plan", flag.ContinueOnError)
	answerFlags(f, &a)
	f.StringVar(&units, presets.FieldUnits, "", "`system` to read bare numbers and to print in: us or metric")
	f.BoolVar(&asJSON, "json", false, "answer as JSON, schema "+planSchema)
	f.BoolVar(&batch, "batch", false, "one JSON request a line on standard input, one answer a line out")
	if code, done := parse(f, args, std, planIntro); done {
		return code
	}
	c, err := presets.Open(getenv)
	if err != nil {
		return refuse(std, err)
	}
	sys, err := systemOf(units, c)
	if err != nil {
		return refuse(std, err)
	}
	if batch {
		if err := aloneWithBatch(f); err != nil {
			return refuse(std, err)
		}
		return runBatch(std, planLine(c, sys, words.English()))
	}
	p, err := answer(c, a, sys)
	if err != nil {
		return refuse(std, err)
	}
	p.sure()
	w := words.English()
	var out []byte
	if asJSON {
		out = append(appendPlan(nil, &p, sys, w), '\n')
	} else {
		out = appendCard(nil, &p, sys, w)
	}
	return writeAnswer(std, out, p.setup.Stopped())
}

// writeAnswer writes an answer and gives the exit code.
func writeAnswer(std stdio, out []byte, stopped bool) int {
	if _, err := std.out.Write(out); err != nil {
		return failed(std, fmt.Errorf("writing the answer: %w", err))
	}
	if stopped {
		return exitCannot
	}
	return exitAnswered
}

// plan is a job and its answer.
type plan struct {
	request calc.Request
	setup   calc.Setup
	spread  *calc.Spread // nil until sure
}

// sure works out how sure the answer is; one that cannot be had is not unsure.
func (p *plan) sure() {
	if p.setup.Short.Is {
		return
	}
	s := calc.Propagate(&p.request, &p.setup)
	p.spread = &s
}

// answer resolves and solves.
func answer(c *presets.Catalogue, a presets.Answers, sys unit.System) (p plan, err error) {
	if p.request, err = c.Request(a, sys); err != nil {
		return p, err
	}
	p.setup, err = calc.Solve(&p.request)
	var problem *calc.Problem
	if errors.As(err, &problem) {
		err = &presets.FieldError{Field: problem.Field, Given: a.Field(problem.Field), Want: problem.Why}
	}
	return p, err
}
