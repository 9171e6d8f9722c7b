package presets

// PlanFields is every field of a plan's answers.
var PlanFields = []Field{
	{Name: FieldCoat, Usage: "`coat`, such as clear or metallic-base"},
	{Name: FieldGun, Usage: "gun `class`: high-volume-low-pressure, reduced-pressure or high-pressure"},
	{Name: FieldTemp, Usage: "booth air `temperature`, such as 75F or 24C"},
	{Name: FieldHumidity, Usage: "relative humidity in `percent`, such as 45"},
	{Name: FieldPanel, Usage: "panel `temperature`; the air's where left out"},
	{Name: FieldAltitude, Usage: "`height` above the sea, such as 5000ft or 1500m"},
	{Name: FieldSupply, Usage: "supply `pressure` at the regulator with the gun spraying, such as 90psi"},
	{Name: FieldHose, Usage: "`length,bore` such as 25ft,3/8in; once more for a whip hose behind it", List: true},
	{Name: FieldCoupling, Usage: "`coupling` at both ends and between hoses: large-bore, ordinary, slim or none"},
	{Name: FieldFilter, Usage: "`filter` behind the regulator, or none"},
	{Name: FieldRegulator, Usage: "regulator `size`: none, 1/4in, 3/8in or 1/2in"},
	{Name: FieldRegulatorAt, Usage: "`place` of the regulator: wall or gun (at its foot)"},
	{Name: FieldGauge, Usage: "`place` of the gun's gauge: handle, foot or none"},
	{Name: FieldWall, Usage: "wall `pressure` as it stands now, trigger pulled: adds what it does to the gun"},
	{Name: FieldCompressor, Usage: "compressor's free `air`, such as 18cfm, or its motor, such as 5hp: checks whether the supply lasts"},
	{Name: FieldReceiver, Usage: "receiver's `volume`, such as 60gal or 200L"},
	{Name: FieldCutIn, Usage: "`pressure` at which the compressor starts; the supply where left out"},
	{Name: FieldCutOut, Usage: "`pressure` at which it stops; 30 psi above cut-in where left out"},
	{Name: FieldMain, Usage: "main from receiver to wall, `length,bore` such as 100ft,3/4in"},
	{Name: FieldOther, Usage: "`air` another gun or tool draws, such as 10cfm or 10cfm,50%; repeatable", List: true},
	{Name: FieldSprayTime, Usage: "how `long` the panel is sprayed without a pause; 3 min where left out"},
	{Name: FieldReceiverTemp, Usage: "`temperature` of the air leaving the receiver; 10 C above the booth's where left out"},
	{Name: FieldLineTemp, Usage: "`temperature` of the main where it is coldest; the booth's where left out"},
	{Name: FieldMark, Usage: "`step` of the wall gauge that can be read; 1psi, or 0.05bar with metric units"},
}
