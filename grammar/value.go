package grammar

import (
	"math"

	"presshand/engine/unit"
)

// valueOf turns an amount into the number that field f holds: in the unit
// written, or in what the shop's habit makes of a bare number. It reports false
// where the unit is not one of f's.
func (r *reader) valueOf(am *amount, f unit.Field) (float64, unit.Unit, bool) {
	if am == nil {
		return 0, unit.Unit{}, false
	}
	own := f.Unit()
	u, d := own, own.Dimension
	if d == unit.Plain {
		d = f.Dimension()
	}
	switch {
	case d == unit.Count || d == unit.Plain:
		if am.unit != nil {
			return 0, u, false
		}
		u = unit.One
	case am.unit != nil && am.unit.Symbol == degree.Symbol:
		u = r.bareUnit(am, unit.Warmth)
	case am.unit != nil:
		u = *am.unit
	default:
		u = r.bareUnit(am, d)
	}
	if u.Dimension != d && d != unit.Count && d != unit.Plain {
		return 0, u, false
	}
	if am.value == nil {
		return math.NaN(), u, true
	}
	v := am.float()
	if am.minus && d == unit.Warmth || am.minus && f == unit.Altitude {
		v = -v
	}
	if d == unit.Count || d == unit.Plain {
		return v, u, true
	}
	return round(own.Of(u.SI(v))), u, true
}

// round drops the noise of a conversion: twelve digits are more than any tape.
func round(v float64) float64 {
	if v == 0 || v-v != 0 {
		return v
	}
	scale, size := 1e12, math.Abs(v)
	for p := 1.0; p < size; p *= 10 {
		scale /= 10
	}
	for p := 0.1; p >= size; p /= 10 {
		scale *= 10
	}
	if scale-scale != 0 || scale == 0 {
		return v
	}
	return math.Round(v*scale) / scale
}

// bareUnit is the unit of a number without one.
func (r *reader) bareUnit(am *amount, d unit.Dimension) unit.Unit {
	switch d {
	case unit.Distance:
		if r.system != nil {
			return *r.system
		}
		if r.habit.Metric {
			return unit.MM
		}
		return unit.Inch
	case unit.Warmth:
		if r.habit.Metric {
			return unit.DegC
		}
		return unit.DegF
	case unit.Proportion:
		return unit.PercentOf
	case unit.Lasting:
		return unit.Minute
	case unit.Pressing:
		return r.bareVacuumUnit(am)
	}
	return unit.One
}

// bareVacuumUnit: inches of mercury in an inch shop; in a metric shop bar, kPa
// or mbar by size. A number that could be two of them has no unit.
func (r *reader) bareVacuumUnit(am *amount) unit.Unit {
	v := am.float()
	switch {
	case v <= 1 && am.form == formInt, !r.habit.Metric && v <= 1.05 && am.brokenInch():
		return unit.One
	case v <= 1.05:
		return unit.Bar
	case !r.habit.Metric && v <= 31:
		return unit.InHg
	case r.habit.Metric && v > 31 && v <= 101.4:
		return unit.KPa
	case r.habit.Metric && v >= 800 && v <= 1013:
		return unit.Mbar
	}
	return unit.One
}

// brokenInch reports whether a number below one was written as a tape has it: no
// gauge in bar is read so.
func (am *amount) brokenInch() bool {
	return am.form == formFraction || am.form == formWords && am.value != nil && !am.value.IsInt()
}

// saysMetric: "need a bar 30 high metric" has its lengths in millimetres.
func (r *reader) saysMetric() bool {
	if !r.says("metric") {
		return false
	}
	for i := range r.items {
		if r.word(i, "metric") && !r.word(i+1, "ton", "tons", "tonne", "tonnes", "thread", "bolt", "bolts", "tape", "wrench", "drill") && !r.word(i-1, "not", "no", "non") {
			r.items[i].used = true
			return true
		}
	}
	return false
}

// layersInMM reports whether a sled or a caul of an inch shop is as thick as only a
// number of millimetres can be: "sled 18, panel 20, mat 5, caul 18".
func (r *reader) layersInMM() bool {
	if r.habit.Metric || !r.means(kindNoun, "sled", "caul") {
		return false
	}
	const thickest = 8 // inches; common practice, no source
	for i := 1; i < len(r.items); i++ {
		if am := r.items[i].amount; am != nil && am.bare() && am.form == formInt && am.link == linkNone && am.float() > thickest && am.float() <= 60 && r.is(i-1, kindNoun, "sled", "caul") && r.isBreak(i+1) {
			return true
		}
	}
	return false
}

// lengthSystem is the unit that bare lengths take from those beside them:
// millimetres or inches, where the message uses one of the two systems only.
func (r *reader) lengthSystem() *unit.Unit {
	metric, inch := r.saysMetric() || r.layersInMM(), false
	for i := range r.items {
		it := &r.items[i]
		if it.amount != nil && it.amount.bare() && !r.habit.Metric && (it.amount.form == formFraction || it.amount.form == formMixed) {
			inch = true // "18mm ply, 3/16 walnut": fractions are of an inch
		}
		if it.list != nil && it.list.unit != nil {
			metric, inch = metric || it.list.unit.Metric, inch || !it.list.unit.Metric
		}
		if it.amount == nil || !it.amount.is(unit.Distance) {
			continue
		}
		if it.amount.unit.Symbol == "m" && it.amount.float() > 30 {
			continue // a height above the sea
		}
		if it.amount.unit.Symbol == "ft" && it.amount.float() > 100 {
			continue
		}
		if it.amount.unitRaw == "in" && r.oneIn(i) {
			continue // a taper, "1 in 12"
		}
		if it.amount.unit.Metric {
			metric = true
		} else {
			inch = true
		}
	}
	switch {
	case metric && !inch:
		u := unit.MM
		return &u
	case inch && !metric:
		if r.habit.Metric && r.tooWideInInches() {
			return nil // "60 x 20, bar 1 1/4 in" in a metric shop
		}
		u := unit.Inch
		return &u
	case !inch && !metric && r.habit.Metres:
		u := unit.MM
		return &u
	case !inch && !metric && r.habit.Inches && !r.tooWideInInches():
		u := unit.Inch
		return &u
	}
	return nil
}

// tooWideInInches reports whether strips have a bare size, or a bare thickness, that
// can only be in millimetres.
func (r *reader) tooWideInInches() bool {
	const widest, thickest = 12, 4
	for i := range r.items {
		if am := r.items[i].amount; am != nil && am.bare() && am.value != nil && am.float() > mostInches && (r.is(i-1, kindNoun, "bar") || r.is(i-1, kindAttr) && r.is(i-2, kindNoun, "bar")) {
			return true // "bar height 19, strips 2 in wide"
		}
	}
	if !r.mentions(kindNoun, "strip") || r.mentions(kindNoun, "panel") {
		return false
	}
	for i := 1; i < len(r.items); i++ {
		a, b := r.items[i-1].amount, r.items[i].amount
		if b == nil || !b.bare() || b.value == nil {
			continue
		}
		if a != nil && a.bare() && a.value != nil && b.link == linkTimes && max(a.float(), b.float()) > widest && min(a.float(), b.float()) > thickest {
			return true
		}
		if r.is(i+1, kindAttr, "thick") && b.float() > thickest {
			return true
		}
	}
	return false
}

// limits are the least and the most that a number under a field can be, in the
// field's unit, with the words for it.
type limit struct {
	low, high float64
	want      string
}

var limits = map[unit.Dimension]limit{
	unit.Distance:   {0, 30000, "a length above 0 and up to 30 m (100 ft)"},
	unit.Pressing:   {0, 100000, "a pressure above 0 and up to 100 MPa"},
	unit.Warmth:     {-40, 150, "a temperature between −40 and 150 °C"},
	unit.Proportion: {0, 100, "0 to 100 %"},
	unit.Lasting:    {0, 1e7, "a time above 0 and up to 100 days"},
	unit.Pumping:    {0, 1e5, "a pump speed above 0 and up to 100 m³/s"},
	unit.Content:    {0, 1e6, "a volume above 0 and up to 1000 m³"},
	unit.Pushing:    {0, 1e7, "a force above 0 and up to 10 MN"},
	unit.Leaking:    {0, 1e4, "a leak above 0 and up to 10 MPa a minute"},
	unit.Spreading:  {0, 2000, "a spread above 0 and below 2000 g/m²"},
}

var fieldLimits = map[unit.Field]limit{
	unit.StripCount:     {1, 2000, "a count of 1 to 2000 strips"},
	unit.BarHeight:      {0, 1000, "a height above 0 and up to 1 m (39 in)"},
	unit.BedWidth:       {20, 30000, "a bed of up to 30 m"},
	unit.PanelCount:     {1, 10000, "a count of 1 to 10000 panels"},
	unit.PressCount:     {1, 100, "1 to 100 presses"},
	unit.BarCount:       {1, 2, "one bar or two"},
	unit.Vacuum:         {0, 101.4, "above 0 and less than one atmosphere, 29.92 inHg or 101.3 kPa at sea level"},
	unit.Ambient:        {30, 110, "a barometer of 30 to 110 kPa"},
	unit.Altitude:       {-430, 9000, "a height of −430 to 9000 m"},
	unit.WedgeRatio:     {0.5, 200, "a taper such as 1:12"},
	unit.FrictionStated: {0, 2, "a friction of 0 to 2"},
	unit.PumpLimit:      {0, 101.4, "less than one atmosphere"},
	unit.WidthChange:    {-3000, 3000, "a change of a few per cent of the width"},
}

// lowBar says what a bar in a metric shop can be where it is lower than a millimetre, as a
// vacuum in bar is whose unit stands first: "bar 0.9".
func (r *reader) lowBar(am *amount, f unit.Field, v float64) string {
	if f != unit.BarHeight || !r.habit.Metric || am.form != formDecimal || am.minus || v <= 0 || v >= 1 {
		return ""
	}
	return "a height such as 25; a vacuum is written “0.9 bar”"
}

// likely is what a number without a unit may make of a field, in millimetres: beyond it the
// number is of something else, or is misread. Our estimates, wider than any shop's work.
var likely = map[unit.Field]struct {
	low, high float64
	want      string
}{
	unit.StripThickness: {0.3, 520, "a thickness up to 20 in (520 mm)"},
	unit.StripWidth:     {4, 30000, "a width from 4 mm on"},
	unit.StripLength:    {60, 30000, "a length from 60 mm on"},
	unit.PanelWidth:     {30, 4000, "a width from 30 mm to 4 m"},
	unit.PanelLength:    {60, 30000, "a length from 60 mm on"},
	unit.BagWidth:       {150, 10000, "a width from 150 mm on"},
	unit.MatThickness:   {0.3, 110, "a thickness up to 4 in (110 mm)"},
	unit.SledThickness:  {1, 160, "a thickness up to 6 in (160 mm)"},
	unit.CaulThickness:  {0.3, 160, "a thickness up to 6 in (160 mm)"},
	unit.CoreThickness:  {1, 160, "a thickness up to 6 in (160 mm)"},
	unit.BarHeight:      {2, 400, "a height from 2 mm to 400 mm"},
}

// unlikely says what could be where a number without a unit cannot well be meant.
func unlikely(am *amount, f unit.Field, v float64) string {
	if !am.bare() || v <= 0 {
		return ""
	}
	if l, ok := likely[f]; ok && (v < l.low || v > l.high) {
		return l.want
	}
	return ""
}

// mayBeZero are the lengths for which nothing is an answer: joints that close
// by hand, a film that does not tent.
var mayBeZero = map[unit.Field]bool{
	unit.Gap: true, unit.Tent: true, unit.Cup: true, unit.Bow: true, unit.Overfill: true, unit.Trim: true, unit.ThicknessSpread: true, unit.Cover: true,
	unit.ShopHumidity: true, unit.ServiceHumidity: true, unit.Leak: true, unit.WedgeForce: true, unit.Unload: true, unit.Altitude: true, unit.FrictionStated: true, unit.PumpLimit: true,
}

// impossible returns what could be, where v cannot be; "" where it can.
// CannotBe says what a field could be where it cannot be v, in its own unit; else it
// is empty.
func CannotBe(f unit.Field, v float64) string { return impossible(f, v) }

func impossible(f unit.Field, v float64) string {
	l, ok := fieldLimits[f]
	if !ok {
		l, ok = limits[f.Dimension()]
	}
	if !ok {
		l = limit{0, 1e9, "a number above 0"}
	}
	switch {
	case v != v, v > l.high, v < l.low:
		return l.want
	case v == 0 && l.low == 0 && !mayBeZero[f] && f.Dimension() != unit.Warmth:
		return l.want
	}
	return ""
}

// unitsBeside gives a bare measure the unit of the one told right before it, where a message
// has millimetres and inches: "5 strips 50 mm wide, 20 thick, our 1 1/2 in bar".
func (r *reader) unitsBeside() {
	if r.system != nil || r.habit.Metric {
		return
	}
	for i := 3; i+1 < len(r.items); i++ {
		if k := i - 3; r.items[i].amount != nil && r.items[i].amount.bare() && r.items[i].amount.form != formFraction && r.items[i].amount.form != formMixed && r.is(i+1, kindAttr) && r.items[i-1].brk == ',' && r.is(i-2, kindAttr) && r.items[k].amount != nil && r.items[k].amount.is(unit.Distance) && r.items[k].amount.unit.Symbol == unit.MM.Symbol {
			u := *r.items[k].amount.unit
			r.items[i].amount.unit = &u
		}
	}
}
