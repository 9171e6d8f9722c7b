package practice

import (
	"boothset/calc"
	"boothset/calc/spread"
	"boothset/presets/shop"
)

// Job is a job to practise on, with the answer.
type Job struct {
	Booth   *shop.Booth
	Gun     string // the catalogue's or the shop's id
	Band    string // of weather that the day was drawn from
	Request *calc.Request
	Setup   *calc.Setup
	Spread  *spread.Spread
}
