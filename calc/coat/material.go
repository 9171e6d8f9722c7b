package coat

import (
	"math"

	"boothset/calc/unit"
)

// Panel is a panel's usual size.
type Panel struct {
	ID        string
	Low, High unit.Area
}

// PanelBasis is the id of the sentence for what the areas of Panels rest on. Certainty is low: measure the panel.
const PanelBasis = "source-panel-areas"

// Panels lists usual panel areas of a mid-size car; PanelBasis says how sure.
func Panels() []Panel {
	ft2 := func(id string, low, high float64) Panel {
		const squareFoot = unit.MetrePerFoot * unit.MetrePerFoot
		return Panel{id, unit.Area(low * squareFoot), unit.Area(high * squareFoot)}
	}
	return []Panel{
		ft2("hood", 15, 20), ft2("door", 10, 13), ft2("fender", 6, 10),
		ft2("bumper", 8, 12), ft2("roof", 18, 22), ft2("whole", 90, 110),
	}
}

// Job is what is to be coated and how well the gun does it.
type Job struct {
	Area     unit.Area   // 0.001 to 1000 m2
	Dry      unit.Length // dry film over all coats
	Solids   float64     // volume solids of the ready mix, 0.01 to 1
	Transfer float64     // transfer efficiency, 0.01 to 1
	Loss     unit.Volume // left in cup, filter and gun, 0 to 5 L
}

// Need is the ready mix that a job takes and where it goes.
type Need struct {
	Volume    unit.Volume // to mix
	OnPanel   unit.Volume
	Overspray unit.Volume
	Loss      unit.Volume
}

// Waste is what does not end on the panel.
func (n Need) Waste() unit.Volume { return n.Overspray + n.Loss }

// Need works out the ready mix: area x dry film/(solids x transfer), and the loss.
func (j Job) Need() (Need, error) {
	if err := first(
		within("area", float64(j.Area), 0.001, 1000, "m2"), film("dry-film", j.Dry),
		solids(j.Solids), transfer(j.Transfer), within("loss", j.Loss.Litres(), 0, 5, "L"),
	); err != nil {
		return Need{}, err
	}
	on := float64(j.Area) * float64(j.Dry) / j.Solids
	sprayed := on / j.Transfer
	return Need{
		Volume:  unit.Volume(sprayed) + j.Loss,
		OnPanel: unit.Volume(on), Overspray: unit.Volume(sprayed - on), Loss: j.Loss,
	}, nil
}

// CupsFor is how often a gun's cup (0.05 to 5 L) is filled for a volume (up to 1e4 L).
func CupsFor(v, cup unit.Volume) (int, error) {
	if err := first(within("volume", v.Litres(), 0, 1e4, "L"), within("cup", cup.Litres(), 0.05, 5, "L")); err != nil {
		return 0, err
	}
	const rounding = 1e-9
	return int(math.Ceil(float64(v/cup) - rounding)), nil
}

// Cost is what a mix costs: the volume of each part times its price a litre (0 to 1e5
// of any currency), in the same order.
func Cost(parts []unit.Volume, prices []float64) (float64, error) {
	if err := within("prices", float64(len(prices)), float64(len(parts)), float64(len(parts)), "prices"); err != nil {
		return 0, err
	}
	sum := 0.0
	for i, v := range parts {
		if err := first(within("part-volume", v.Litres(), 0, 1e4, "L"), within("price", prices[i], 0, 1e5, "")); err != nil {
			return 0, err
		}
		sum += v.Litres() * prices[i]
	}
	return sum, nil
}

// CostOfWrong compares a job done right with the same job at a worse (or better)
// transfer efficiency.
type CostOfWrong struct {
	Right, Wrong Need
	Extra        unit.Volume // mixed more than for the right one
	ExtraCost    float64     // at the price of a litre of mix
	Share        float64     // Extra as a fraction of the right volume
}

// CompareTransfer is what a setting with transfer efficiency wrong costs on the job,
// at a price a litre of ready mix (0 where it is not known).
func (j Job) CompareTransfer(wrong, price float64) (CostOfWrong, error) {
	right, err := j.Need()
	if err != nil {
		return CostOfWrong{}, err
	}
	if err := within("price", price, 0, 1e5, ""); err != nil {
		return CostOfWrong{}, err
	}
	j.Transfer = wrong
	other, err := j.Need()
	if err != nil {
		return CostOfWrong{}, err
	}
	extra := other.Volume - right.Volume
	return CostOfWrong{
		Right: right, Wrong: other, Extra: extra,
		ExtraCost: extra.Litres() * price, Share: float64(extra / right.Volume),
	}, nil
}
