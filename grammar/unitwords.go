package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// unitWords are the ways of writing a unit. Behind a number they are its unit;
// alone they may say what the answer is wanted in.
var unitWords = []struct {
	unit unit.Unit
	said string
}{
	{unit.MM, "mm, millimetre, millimetres, millimeter, millimeters, mil metric"},
	{unit.CM, "cm, centimetre, centimetres, centimeter, centimeters"},
	{unit.Metre, "m, metre, metres, meter, meters"},
	{unit.Inch, `in, ins, inch, inches, incher, inchers, ", ' ', inchs`},
	{unit.Foot, "ft, foot, feet, '"},
	{unit.Yard, "yd, yard, yards"},
	{unit.Thou, "thou, thousandths"},
	{unit.Micrometre, "µm, um, micron, microns"},

	{unit.Pa, "pa, pascal, pascals"},
	{unit.HPa, "hpa, hectopascal, hectopascals"},
	{unit.KPa, "kpa, kilopascal, kilopascals, kpas, kpag"},
	{unit.MPa, "mpa, megapascal, megapascals"},
	{unit.Mbar, "mbar, mbars, millibar, millibars, mb, mbarg"},
	{unit.Bar, "barg"},
	{unit.Atm, "atm, atmosphere, atmospheres"},
	{unit.Torr, "torr"},
	{unit.MMHg, "mmhg, mm hg, mm of mercury, millimetres of mercury, mm of hg"},
	{unit.CMHg, "cmhg, cm hg"},
	{unit.NPerMM2, "n/mm2, n/mm², n per mm2, n/sqmm, n per sq mm, n per square mm"},
	{unit.KgfPerCM2, "kg/cm2, kg/cm², kgf/cm2, kgf/cm², kg per cm2"},
	{unit.InHg, `inhg, inchhg, incheshg, ingh, inhgs, ihg, in gh, inchs hg, in hg, inch hg, inches hg, "hg, " hg, ins hg, inches of mercury, in of hg, inches of hg, in of merc, inches of merc, in merc, inches merc, in of mercury, inch of mercury, hg, inch mercury, inches mercury, inhgs, inch of hg, in vac, in. hg, in. of mercury, in. mercury, in. of hg, in. of vacuum, ' ' hg, inches of vacuum, inch of vacuum, inches vacuum, inches vac, inches of vac, in of vacuum, in of vac, " of vacuum, " vac, " vacuum, " of vac, " of hg, inch vac, inch vacuum, " of mercury, in vacuum`},
	{unit.PSI, "psi, psig, pounds per square inch, lb/in2, lb/in², lbs/in2, lbs per square inch, pounds a square inch, lb per square inch, psia"},
	{unit.InH2O, `inh2o, in h2o, inches of water, in of water, in wg, inches wg, "h2o, " h2o, inches water`},
	{unit.TonPerFt2, "tons per square foot, ton per square foot, tons/ft2, tons/ft², ton/ft2, tons a square foot, tons per sq ft, tons/sqft, tsf, ton per sq ft, tons to the square foot, tons/sq ft, ton/sq ft, ton a square foot"},
	{unit.PSF, "psf, lb/ft2, pounds per square foot, lbs per square foot, lb per sq ft, lbs/sq ft"},

	{unit.Newton, "n, newton, newtons"},
	{unit.KN, "kn, kilonewton, kilonewtons"},
	{unit.KGF, "kgf, kilos of force, kg force"},
	{unit.PoundF, "lbf, pounds force, pounds of force, lbs of force, lb force, lbs force, pound force"},
	{unit.ShortTonF, "ton, tons, short tons"},

	{unit.DegC, "°c, c, celsius, graden, graden celsius, grad celsius, gradi, degc, deg c, degrees c, degree c, centigrade, degrees celsius, deg celsius, °celsius"},
	{unit.DegF, "°f, f, fahrenheit, degf, deg f, degrees f, degree f, degrees fahrenheit, deg fahrenheit, °fahrenheit"},
	{degree, "°, degrees, deg, degree"},

	{unit.Second, "s, sec, secs, second, seconds"},
	{unit.Minute, "min, mins, minute, minutes, minuten"},
	{unit.Hour, "h, hr, hrs, hour, hours"},
	{unit.Day, "day, days"},

	{unit.Gram, "g, gram, grams, gramme, grammes, gr"},
	{unit.Kilogram, "kg, kgs, kilo, kilos, kilogram, kilograms"},
	{unit.Ounce, "oz, ounce, ounces"},
	{unit.Pound, "lb, lbs, pound, pounds"},

	{unit.Litre, "l, litre, litres, liter, liters, ltr, ltrs"},
	{unit.Millilitre, "ml, millilitre, millilitres, milliliter, milliliters"},
	{unit.CubicMetre, "m3, m³, cubic metre, cubic metres, cubic meter, cubic meters, cu m"},
	{unit.Gallon, "gal, gals, gallon, gallons, us gal"},
	{unit.CubicFoot, "ft3, ft³, cubic foot, cubic feet, cubic ft, cu ft, cuft, cf"},
	{unit.FluidOunce, "fl oz, fluid ounces, fluid ounce, floz"},
	{unit.Quart, "qt, qts, quart, quarts"},

	{unit.SquareMetre, "m2, m², sq m, square metre, square metres, square meter, square meters, sqm"},
	{unit.SquareFoot, "ft2, ft², sq ft, sqft, square foot, square feet"},
	{unit.SquareInch, "in2, in², sq in, square inch, square inches, sqin"},

	{unit.LitrePerSecond, "l/s, lps, l a second, litre a second, liter a second, liters a second, litre per second, liter per second, litres a second, litres per second, liters per second, l/sec, l per s, litre/s, litres/s"},
	{unit.LitrePerMinute, "l/min, lpm, l a minute, l per minute, litres a minute, litres per minute, liters per minute, litre a minute, liters a minute, ltr/min, litres/min, l per min, l a min, l/minute, litre per minute, litres/minute, l / min, ltrs a minute, ltrs/min"},
	{unit.CubicMetrePerMin, crossed("m3,m³,cubic metre,cubic meter,cubic metres,cubic meters,cu m,cbm", "per ,a ,/", "min,minute")},
	{unit.CubicMetrePerHour, "m3/h, m³/h, m3/hr, m³/hr, cubic metres an hour, cubic metres per hour, cubic meters per hour, cubic meters an hour, m3 per hour, m³ per hour, cbm/h, m3 an hour, cu m/h, m3/hour, kuub per uur, cubic metre an hour, cubic metre per hour, m3/uur"},
	{unit.LitrePerMinute, "l/min, lpm, liter in minute, liters in minute, litre in minute, litres in minute, l in minute, liter each minute, l a minute, l per minute, litres a minute, litres per minute, liters per minute, litre a minute, liters a minute, ltr/min, litres/min, l per min, l a min, l/minute, litre per minute, litres/minute, l / min, ltrs a minute, ltrs/min"},
	{unit.CubicMetrePerHour, "m3/h, m³/h, cubic meter in hour, cubic meters in hour, cubic metre in hour, cubic metres in hour, cubic meter in one hour, m3 in hour, m³ in hour, m3 in an hour, cubic meter each hour, cubic metres each hour, cubic meter the hour, m3/hr, m³/hr, cubic metres an hour, cubic metres per hour, cubic meters per hour, cubic meters an hour, m3 per hour, m³ per hour, cbm/h, m3 an hour, cu m/h, m3/hour, kuub per uur, cubic metre an hour, cubic metre per hour, m3/uur"},
	{unit.CubicFootPerMinute, "cfm, cubic feet a minute, cubic feet per minute, cubic foot per minute, scfm, ft3/min, cu ft/min, cfms, cf/m"},

	{unit.KPaPerMin, "kpa/min, kpa per minute, kpa a minute, kpa per min, kpa a min, kpa/minute, kpa each minute, kpa every minute"},
	{unit.MbarPerSec, "mbar/s, mbar per second, mbar a second, mbar/sec, mbar per sec, mbar a sec"},
	{unit.MbarPerMin, "mbar/min, mbar per minute, mbar a minute, mbar per min, mbar a min, mbar/minute, millibar a minute, mbar every minute, mbar each minute"},
	{unit.InHgPerMin, `inhg/min, inhg per minute, inhg a minute, in hg/min, in hg a minute, in hg per minute, inches a minute, inches per minute, inch a minute, inch per minute, inhg per min, inhg a min, in/min, in a minute, inhg/minute, in per minute, inhg every minute, inch every minute, inhg each minute, inches of mercury a minute, inches of mercury per minute, inches hg a minute, inches hg per minute, inch of vacuum a minute, inches of vacuum a minute, inches of vacuum per minute, " a minute, "/min, "hg/min, "hg a minute, " per minute`},

	{unit.GPerM2, "gsm, g m2, " + crossed("g,gr,gm,gms,gram,grams", "per ,a ,to the ,/", "m2,m²,sqm,sq m,square metre,square meter,sq metre,sq meter,metre squared,meter squared,m squared")},
	{unit.GPerFt2, crossed("g,gr,gm,gms,gram,grams", "per ,a ,to the ,/", squareFeet)},
	{unit.OzPerFt2, crossed("oz,ounce,ounces", "per ,a ,to the ,/", squareFeet)},
	{unit.OzPerYd2, crossed("oz,ounce,ounces", "per ,a ,to the ,/", "yd2,yd²,sq yd,square yard,sq yard")},
	{unit.LbPer1000Ft2, "lbs per thousand, " + crossed("lb,lbs,pound,pounds", "per ,a ,to the ,/", "1000 ft2,1000 sq ft,1000 square feet,1000 sqft,1000 ft²,1000 feet,thousand ft2,thousand sq ft,thousand square feet,thousand sqft,thousand ft²,thousand feet,msgl")},

	{unit.PercentOf, "%, percent, per cent, pct, prozent, procent"},
}

const squareFeet = "ft2,ft²,sq ft,sqft,square foot,sq foot,sf"

// degree is a temperature whose scale the shop's habit decides.
var degree = unit.Unit{Symbol: "°", Dimension: unit.Warmth}

// crossed joins each of the firsts with each joiner and each of the lasts.
func crossed(firsts, joiners, lasts string) string {
	var said []string
	for _, first := range strings.Split(firsts, ",") {
		for _, joiner := range strings.Split(joiners, ",") {
			space := " "
			if joiner == "/" {
				space = ""
			}
			for _, last := range strings.Split(lasts, ",") {
				said = append(said, first+space+joiner+last)
			}
		}
	}
	return strings.Join(said, ", ")
}
