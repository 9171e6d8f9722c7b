package presets

// PlanFields is every field of a plan's answers.
var PlanFields = []Field{
	{Name: FieldCoat, Usage: "usage-coat"},
	{Name: FieldGun, Usage: "usage-gun"},
	{Name: FieldTemp, Usage: "usage-temp"},
	{Name: FieldHumidity, Usage: "usage-humidity"},
	{Name: FieldPanel, Usage: "usage-panel"},
	{Name: FieldAltitude, Usage: "usage-altitude"},
	{Name: FieldSupply, Usage: "usage-supply"},
	{Name: FieldHose, Usage: "usage-hose", List: true},
	{Name: FieldCoupling, Usage: "usage-coupling"},
	{Name: FieldFilter, Usage: "usage-filter"},
	{Name: FieldRegulator, Usage: "usage-regulator"},
	{Name: FieldRegulatorAt, Usage: "usage-regulator-at"},
	{Name: FieldGauge, Usage: "usage-gauge"},
	{Name: FieldWall, Usage: "usage-wall"},
	{Name: FieldCompressor, Usage: "usage-compressor"},
	{Name: FieldReceiver, Usage: "usage-receiver"},
	{Name: FieldCutIn, Usage: "usage-cut-in"},
	{Name: FieldCutOut, Usage: "usage-cut-out"},
	{Name: FieldMain, Usage: "usage-main"},
	{Name: FieldOther, Usage: "usage-other", List: true},
	{Name: FieldSprayTime, Usage: "usage-spray-time"},
	{Name: FieldReceiverTemp, Usage: "usage-receiver-temp"},
	{Name: FieldLineTemp, Usage: "usage-line-temp"},
	{Name: FieldMark, Usage: "usage-mark"},
}
