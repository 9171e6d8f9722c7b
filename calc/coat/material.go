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

// PanelSource is the id of the sentence for what the areas of Panels rest on, which is common
// practice. Certainty is low: measure the panel.
const PanelSource = "source-panel-areas"

// Panels lists usual panel areas of a mid-size car, and a whole one and a whole large sport
// utility vehicle as shops reckon them; the panels of a car measured one by one come to more
// than the whole is reckoned at.
func Panels() []Panel {
	ft2 := func(id string, low, high float64) Panel {
		const squareFoot = unit.MetrePerFoot * unit.MetrePerFoot
		return Panel{id, unit.Area(low * squareFoot), unit.Area(high * squareFoot)}
	}
	return []Panel{
		ft2("hood", 15, 20), ft2("door", 10, 13), ft2("fender", 6, 10),
		ft2("bumper", 8, 12), ft2("roof", 18, 22), ft2("whole", 90, 110), ft2("whole-suv", 120, 160),
	}
}

// Job is what is to be coated and how well the gun does it.
type Job struct {
	Area     unit.Area   // 0.001 to 1000 m2
	Dry      unit.Length // dry film over all coats
	Solids   float64     // volume solids of the ready mix, 0.01 to 1
	Transfer float64     // what lands of what is aimed at the panel, 0.01 to 1
	// Lead is what is sprayed past the ends of the passes, trigger pulled, as a share of what
	// is aimed at the panel, 0 to 2.
	Lead float64
	// Loss is left in cup, filter and gun at each filling, 0 to 5 L; of more than nine tenths of
	// the cup so much counts.
	Loss unit.Volume
	Cup  unit.Volume // of the gun, 0.05 to 5 L; 0 is one that holds it all
}

// Need is the ready mix that a job takes and where it goes.
type Need struct {
	Volume    unit.Volume // to mix
	OnPanel   unit.Volume
	Overspray unit.Volume // aimed at the panel, and did not land
	Lead      unit.Volume // sprayed past the ends of the passes
	Loss      unit.Volume // over all fillings
	Fillings  int         // of the cup
}

// Sprayed is what goes through the gun.
func (n Need) Sprayed() unit.Volume { return n.OnPanel + n.Overspray + n.Lead }

// Waste is what does not end on the panel.
func (n Need) Waste() unit.Volume { return n.Overspray + n.Lead + n.Loss }

// Need works out the ready mix: area x dry film/(solids x transfer) is aimed at the panel, a
// share more goes past it, and each filling of the cup leaves its loss.
func (j Job) Need() (Need, error) {
	if err := first(
		within("area", float64(j.Area), 0.001, 1000, "m2"), film("dry-film", j.Dry),
		solids(j.Solids), transfer(j.Transfer), share("lead", j.Lead, 0, 2), within("loss", j.Loss.Litres(), 0, 5, "L"),
	); err != nil {
		return Need{}, err
	}
	on := float64(j.Area) * float64(j.Dry) / j.Solids
	aimed := on / j.Transfer
	n := Need{OnPanel: unit.Volume(on), Overspray: unit.Volume(aimed - on), Lead: unit.Volume(aimed * j.Lead)}
	if j.Cup != 0 {
		if err := within("cup", j.Cup.Litres(), 0.05, 5, "L"); err != nil {
			return Need{}, err
		}
	}
	n.Fillings, n.Loss = j.fillings(n.Sprayed())
	n.Volume = n.Sprayed() + n.Loss
	return n, nil
}

// fillings is how often the cup is filled to spray so much, and what is left over them all.
func (j Job) fillings(sprayed unit.Volume) (int, unit.Volume) {
	if j.Cup == 0 {
		return 1, j.Loss
	}
	const rounding, mostKept = 1e-9, 0.9
	loss := min(j.Loss, mostKept*j.Cup)
	n := max(1, int(math.Ceil(float64(sprayed/(j.Cup-loss))-rounding)))
	return n, loss * unit.Volume(n)
}

// Batch is the ready mix for a part of the job, 0 to 1, that is mixed by itself.
func (j Job) Batch(n Need, part float64) unit.Volume {
	sprayed := n.Sprayed() * unit.Volume(part)
	_, loss := j.fillings(sprayed)
	return sprayed + loss
}

// LeadShare is what passes over an area leave past their ends, trigger pulled for a length
// before and after it (0 to 0.3 m each), as a share of what is aimed at it. The area is taken
// as square and its passes as long as its side: 2 lead/side.
func LeadShare(area unit.Area, lead unit.Length) (float64, error) {
	if err := first(within("area", float64(area), 0.001, 1000, "m2"), within("lead", float64(lead), 0, 0.3, "m")); err != nil {
		return 0, err
	}
	return 2 * float64(lead) / math.Sqrt(float64(area)), nil
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
