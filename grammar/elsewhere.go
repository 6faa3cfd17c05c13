package grammar

import "presshand/engine/unit"

// matters are what other people cook, grow, lay, mend, play and see: strips, bags,
// beds, pads and sheets of it are none of a press's, nor are their numbers. What is
// also a use of a panel ("garden", "dog crate", "guitar top") is not among them.
var matters = wordSet(`
beef bacon ham eggs sandwich sandwiches burger burgers chips crisps pint pints beer beers lager cider wine whisky cocktail milk butter flour syrup brix jam soup stew curry
rice pasta noodles salad tomato tomatoes potato potatoes onion onions carrot carrots lemon lemons garlic lettuce peas pea cookies brownies muffins pancakes breakfast loaf loaves
yoghurt yogurt chocolate recipe popcorn sweets candy pie pies
gravel compost mulch topsoil soil turf sod fertiliser fertilizer manure seed seeds seedlings veg vegetable vegetables hedge hedges shrub shrubs cement mortar plaster drywall
plasterboard grout tarmac asphalt sand driveway pergola gutter gutters joists rafters paving pavers pebbles allotment rotten ballast hardcore rebar plumber plumbing copper road lawn
photo photos stamps parcel envelopes pens tape screws nails teeth tooth blade torque bolt bolts rivet rivets
manifold carburetor carburettor carb booster brake brakes alternator exhaust piston pistons tyres tires windscreen windshield mileage mpg petrol diesel
tickets games receivers league football soccer tennis cinema movie gig concert reps squats deadlift biceps gym yoga stretches muscle muscles
ibuprofen paracetamol aspirin fever doctor dentist blood pills nappies diapers
passport airport platform flights taxi rent mortgage salary dishwasher fridge freezer sofa mattress duvet pillow laptop poem
hay bales firewood molding moulding flooring underlay tile tiles thinset hose hvac nailgun collector fan fans slime flag hike ribs oysters denim shotgun finger babys bathroom bathrooms surgery appointment`)

// supplies are matters that a shop has and does too: "sand it to 5/8", "tape the ends".
var supplies = wordSet(`bolt bolts sand tape nails screws blade teeth cement copper hose fan fans collector rent plaster pens seed turf`)

// engines and motors are words of what shows a vacuum too; the motors' own no
// press has.
var (
	engines = wordSet(`truck trucks car cars engine engines brake brakes distributor cylinder cylinders valve valves piston pistons rings`)
	motors  = wordSet(`idle idling manifold intake carb carburetor carburettor booster throttle`)
)

// groceries make of the wood before them something to eat or drink: "maple syrup".
var groceries = wordSet(`syrup pie pies bread cake cakes tart tarts jam cookies muffins liqueur juice butter oil sap tomato tomatoes blossom tea smoke smoked nut nuts allergy beer sol needles cones tree trees blossoms leafs cliff street road avenue lane grove rapids hill hills valley park ridge wednesday`)

// groceriesOfWood takes a wood's meaning from what is eaten.
func (r *reader) groceriesOfWood() {
	if !r.means(kindWood) {
		return
	}
	for i := range r.items {
		if r.items[i].kind == kindWood && i+1 < len(r.items) && r.items[i+1].kind == kindNone && groceries[r.items[i+1].word] && !r.is(i+2, kindNoun) {
			r.items[i].meaning = meaning{}
		}
	}
}

// holdsThings takes the meaning of a press from a bag that has something in it: "a
// bag of mix", "4 bags of feed".
func (r *reader) holdsThings() {
	if !r.says("of") || !r.means(kindNoun, "bag") {
		return
	}
	for i := range r.items {
		if r.is(i, kindNoun, "bag") && r.word(i, "bag", "bags") && r.word(i+1, "of") && i+2 < len(r.items) && r.items[i+2].amount == nil && !r.is(i+2, kindNoun) && !r.word(i+2, "a", "the", "this", "that", "ours", "mine", "it", "about") {
			r.items[i].meaning = meaning{}
			if r.is(i+2, kindAsk) {
				r.items[i+2].meaning = meaning{}
			}
		}
	}
}

// engineVacuum reports whether a vacuum that is spoken of is a motor's: "truck's
// vacuum gauge reads 18 at idle".
func (r *reader) engineVacuum() bool {
	vehicle, running := false, false
	for i := range r.items {
		it := &r.items[i]
		if it.amount != nil {
			continue
		}
		if it.kind == kindNoun && it.id != "leak" || it.kind == kindGlue || it.kind == kindWood {
			return false
		}
		engine, motor := engines[it.word], motors[it.word]
		if running && (engine || motor) || motor && vehicle || (engine || motor) && r.is(i+1, kindVacuum, "vacuum", "gauge") {
			return true
		}
		running, vehicle = running || motor, vehicle || engine && !motor
	}
	return false
}

// elsewhere reports whether a message that opens a thread speaks of other people's
// matters in words that the shop has too: "two strips of bacon each and three eggs".
func (r *reader) elsewhere() bool {
	if r.habit.Follows || r.firmSigns() {
		return false
	}
	score, named, wood := 0, 0, false
	parts := r.mentions(kindNoun)
	for i := range r.items {
		it := &r.items[i]
		switch {
		case it.amount != nil:
			if r.countsOther(i) {
				score++
			}
		case it.kind == kindWood:
			wood = parts || r.stated() > 2
		case r.is(i, kindFill, "elsewhere"):
			score++
			named++
		case it.kind == kindFill && it.word == "vacuum cleaner", it.word == "post" && i+1 < len(r.items) && r.items[i+1].amount != nil, r.word(i, "posts"), r.word(i, "bag", "bags") && it.kind == kindNone && r.word(i+1, "of"):
			score++
		case (it.kind == kindNone || r.is(i, kindRole, "ago")) && (matters[it.word] || foreignTrades[it.word]) && !r.is(i+1, kindNoun, "panel", "strip") && !r.word(i+1, "table"):
			score++
			if !supplies[it.word] || r.word(i-1, "of") {
				named++
			}
		}
		if r.is(i, kindNoun, "strip", "panel") && r.ofOther(i+1) && (r.pluralOther(i+2) || r.pluralOther(i+3)) {
			named++ // a wood's name is no plural
		}
		if (r.is(i, kindNoun, "strip", "panel", "bed", "mat", "core") || it.word == "bag" || it.word == "bags" || it.kind == kindUnit || it.amount != nil && it.amount.unit != nil) && r.ofOther(i+1) {
			score++
		}
	}
	return named > 0 && (score >= 2 && !wood || score >= 3 || r.stated() <= 1 && !wood)
}

// besides reports whether a message within a thread is of other people's matters and
// has no word of the shop's: "dentist at 3, back by 4:30".
func (r *reader) besides() bool {
	named := false
	for i := range r.items {
		it := &r.items[i]
		switch it.kind {
		case kindNoun, kindGlue, kindWood, kindVacuum, kindFact, kindAttr, kindVerb:
			return false
		case kindNone, kindRole:
			named = named || it.amount == nil && matters[it.word] && !supplies[it.word]
		}
	}
	return named
}

// stated counts what was read, a size for one.
func (r *reader) stated() int {
	n := 0
	for _, b := range r.bound {
		if !r.timesAt(b.from) {
			n++
		}
	}
	return n
}

// countsOther: "three eggs", "two tickets": the amount at item i counts what the
// shop has no word for.
func (r *reader) countsOther(i int) bool {
	_, whole := r.items[i].amount.whole()
	return whole && r.items[i].amount.bare() && i+1 < len(r.items) && r.unknown(i+1) && len(r.items[i+1].word) > 3 && isPlural(r.items[i+1].word)
}

func (r *reader) pluralOther(i int) bool {
	return i < len(r.items) && r.unknown(i) && len(r.items[i].word) > 4 && isPlural(r.items[i].word)
}

// ofOther: "of pea gravel" at item i.
func (r *reader) ofOther(i int) bool {
	return r.word(i, "of") && i+1 < len(r.items) && r.unknown(i+1) && len(r.items[i+1].word) > 2
}

// firmSigns reports whether a message has what only a press shop says.
func (r *reader) firmSigns() bool {
	parts := r.mentions(kindNoun)
	for i := range r.items {
		it := &r.items[i]
		switch it.kind {
		case kindGlue, kindStock, kindPeril, kindFact:
			return true
		case kindVacuum:
			if it.id != "pull" {
				return true
			}
		case kindNoun:
			if r.is(i, kindNoun, "sled", "caul", "wedge", "joint", "reservoir", "film") && !r.word(i, "base") {
				return true
			}
		case kindAir:
			if parts && r.is(i, kindAir, "rh", "mc") || r.is(i, kindAir, "barometer") {
				return true
			}
		case kindRole:
			if r.is(i, kindRole, "trim", "friction", "layup", "unload", "ripped", "vary", "lot") {
				return true
			}
		}
		if am := it.amount; am != nil && (it.word == "inhg" || parts && (am.is(unit.Proportion) || am.is(unit.Pumping) || am.is(unit.Leaking))) {
			return true
		}
	}
	return false
}

// phones: "call me at 555 0142 about the 8 oak tops" has a number to call and asks
// nothing.
func (r *reader) phones() bool {
	if !r.says("me", "us", "him", "her", "them") {
		return false
	}
	for i := range r.items {
		if !r.word(i, "call", "text", "ring", "phone", "reach", "whatsapp") || !r.word(i+1, "me", "us", "him", "her", "them") {
			continue
		}
		k := i + 2
		for r.word(k, "back", "at", "on", "under", "up") {
			k++
		}
		if k < len(r.items) && r.items[k].amount != nil && r.items[k].amount.bare() && r.items[k].amount.float() >= 100 && !r.pressureSaid() {
			return true
		}
	}
	return false
}

// kidsAlone: "my kid turned 7 today" names a child and nothing of a shop.
func (r *reader) kidsAlone(i int) bool {
	if !in(r.items[i].word, "child", "children", "my kid", "my son", "my daughter", "toddler", "toddlers") || r.asksSomething() {
		return false
	}
	for k := range r.items {
		if r.is(k, kindNoun) || r.is(k, kindVacuum) || r.is(k, kindGlue) || r.is(k, kindAir, "shop") || k != i && r.is(k, kindPeril) || r.word(k, "shop", "can", "could", "help", "helps", "helping", "near", "run", "runs", "watch") {
			return false
		}
	}
	return true
}
