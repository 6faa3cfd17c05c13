package grammar

import "presshand/engine/unit"

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
	{unit.InHg, `inhg, ingh, inhgs, ihg, in gh, inchs hg, in hg, inch hg, inches hg, "hg, " hg, ins hg, inches of mercury, in of hg, inches of hg, in of mercury, inch of mercury, hg, inch mercury, inches mercury, inhgs, inch of hg, in vac, in. hg, in. of mercury, in. mercury, in. of hg, in. of vacuum, ' ' hg, inches of vacuum, inch of vacuum, inches vacuum, inches vac, inches of vac, in of vacuum, in of vac, " of vacuum, " vac, " vacuum, " of vac, " of hg, inch vac, inch vacuum, " of mercury, in vacuum`},
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
	{unit.CubicFoot, "ft3, ft³, cubic foot, cubic feet, cu ft, cuft, cf"},
	{unit.FluidOunce, "fl oz, fluid ounces, fluid ounce, floz"},
	{unit.Quart, "qt, qts, quart, quarts"},

	{unit.SquareMetre, "m2, m², sq m, square metre, square metres, square meter, square meters, sqm"},
	{unit.SquareFoot, "ft2, ft², sq ft, sqft, square foot, square feet"},
	{unit.SquareInch, "in2, in², sq in, square inch, square inches, sqin"},

	{unit.LitrePerSecond, "l/s, lps, l a second, litre a second, liter a second, liters a second, litre per second, liter per second, litres a second, litres per second, liters per second, l/sec, l per s, litre/s, litres/s"},
	{unit.LitrePerMinute, "l/min, lpm, l a minute, l per minute, litres a minute, litres per minute, liters per minute, litre a minute, liters a minute, ltr/min, litres/min, l per min, l a min, l/minute, litre per minute, litres/minute, l / min, ltrs a minute, ltrs/min"},
	{unit.CubicMetrePerHour, "m3/h, m³/h, m3/hr, m³/hr, cubic metres an hour, cubic metres per hour, cubic meters per hour, cubic meters an hour, m3 per hour, m³ per hour, cbm/h, m3 an hour, cu m/h, m3/hour, kuub per uur, cubic metre an hour, cubic metre per hour, m3/uur"},
	{unit.CubicFootPerMinute, "cfm, cubic feet a minute, cubic feet per minute, cubic foot per minute, scfm, ft3/min, cu ft/min, cfms, cf/m"},

	{unit.KPaPerMin, "kpa/min, kpa per minute, kpa a minute, kpa per min, kpa a min, kpa/minute, kpa each minute, kpa every minute"},
	{unit.MbarPerMin, "mbar/min, mbar per minute, mbar a minute, mbar per min, mbar a min, mbar/minute, millibar a minute, mbar every minute, mbar each minute"},
	{unit.InHgPerMin, `inhg/min, inhg per minute, inhg a minute, in hg/min, in hg a minute, in hg per minute, inches a minute, inches per minute, inch a minute, inch per minute, inhg per min, inhg a min, in/min, in a minute, inhg/minute, in per minute, inhg every minute, inch every minute, inhg each minute, inches of mercury a minute, inches of mercury per minute, inches hg a minute, inches hg per minute, inch of vacuum a minute, inches of vacuum a minute, inches of vacuum per minute, " a minute, "/min, "hg/min, "hg a minute, " per minute`},

	{unit.GPerM2, "g/m2, g/m², g per m2, gsm, grams per square metre, grams per square meter, grams a square metre, g per square metre, g per sq m, g/sqm, grams/m2, g m2, grams per m2, g per square meter, g per sq meter, g per sq metre, g per sqm, g per m², g per metre squared, g per meter squared, g per m squared, g a square meter, g a square metre, g a sq meter, g a sq metre, g a sq m, g a sqm, g a m2, g a m², g a metre squared, g a meter squared, g a m squared, g/square meter, g/square metre, g/sq meter, g/sq metre, g/sq m, g/metre squared, g/meter squared, g/m squared, g to the square meter, g to the square metre, g to the sq meter, g to the sq metre, g to the sq m, g to the sqm, g to the m2, g to the m², g to the metre squared, g to the meter squared, g to the m squared, gr per square meter, gr per square metre, gr per sq meter, gr per sq metre, gr per sq m, gr per sqm, gr per m2, gr per m², gr per metre squared, gr per meter squared, gr per m squared, gr a square meter, gr a square metre, gr a sq meter, gr a sq metre, gr a sq m, gr a sqm, gr a m2, gr a m², gr a metre squared, gr a meter squared, gr a m squared, gr/square meter, gr/square metre, gr/sq meter, gr/sq metre, gr/sq m, gr/sqm, gr/m2, gr/m², gr/metre squared, gr/meter squared, gr/m squared, gram per square meter, gram per square metre, gram per sq meter, gram per sq metre, gram per sq m, gram per sqm, gram per m2, gram per m², gram per metre squared, gram per meter squared, gram per m squared, gram a square meter, gram a square metre, gram a sq meter, gram a sq metre, gram a sq m, gram a sqm, gram a m2, gram a m², gram a metre squared, gram a meter squared, gram a m squared, gram/square meter, gram/square metre, gram/sq meter, gram/sq metre, gram/sq m, gram/sqm, gram/m2, gram/m², gram/metre squared, gram/meter squared, gram/m squared, grams per sq meter, grams per sq metre, grams per sq m, grams per sqm, grams per m², grams per metre squared, grams per meter squared, grams per m squared, grams a square meter, grams a sq meter, grams a sq metre, grams a sq m, grams a sqm, grams a m2, grams a m², grams a metre squared, grams a meter squared, grams a m squared, grams/square meter, grams/square metre, grams/sq meter, grams/sq metre, grams/sq m, grams/sqm, grams/m², grams/metre squared, grams/meter squared, grams/m squared, grams to the square meter, grams to the square metre, grams to the sq meter, grams to the sq metre, grams to the sq m, grams to the sqm, grams to the m2, grams to the m², grams to the metre squared, grams to the meter squared, grams to the m squared, gm per square meter, gm per square metre, gm per sq meter, gm per sq metre, gm per sq m, gm per sqm, gm per m2, gm per m², gm per metre squared, gm per meter squared, gm per m squared, gm a square meter, gm a square metre, gm a sq meter, gm a sq metre, gm a sq m, gm a sqm, gm a m2, gm a m², gm a metre squared, gm a meter squared, gm a m squared, gm/square meter, gm/square metre, gm/sq meter, gm/sq metre, gm/sq m, gm/sqm, gm/m2, gm/m², gm/metre squared, gm/meter squared, gm/m squared, gms per square meter, gms per square metre, gms per sq meter, gms per sq metre, gms per sq m, gms per sqm, gms per m2, gms per m², gms per metre squared, gms per meter squared, gms per m squared, gms a square meter, gms a square metre, gms a sq meter, gms a sq metre, gms a sq m, gms a sqm, gms a m2, gms a m², gms a metre squared, gms a meter squared, gms a m squared, gms/square meter, gms/square metre, gms/sq meter, gms/sq metre, gms/sq m, gms/sqm, gms/m2, gms/m², gms/metre squared, gms/meter squared, gms/m squared"},
	{unit.LbPer1000Ft2, "lb/1000 ft2, lbs per thousand, lb per thousand square feet, lb per 1000 sq ft, lbs per thousand square feet, lbs/msgl, lb/msgl"},

	{unit.PercentOf, "%, percent, per cent, pct, prozent, procent"},
}

// degree is a temperature whose scale the shop's habit decides.
var degree = unit.Unit{Symbol: "°", Dimension: unit.Warmth}
