package grammar

import (
	"slices"
	"strings"

	"presshand/engine/unit"
)

// perils are dangers that people ask about. The id says which.
var perils = []entry{
	{kindPeril, "vessel", "water cooler, cooler bottle, water cooler bottle, bucket, buckets, pail, plexi, plexi lid, perspex lid, perspex, lexan lid, lexan, polycarbonate lid, polycarbonate, polycarbonate window, polycarb, viewing window, suck on a pickle jar, suck on a jar, suck on a mason jar, suck on a jam jar, suck on a glass, suck on a bottle, suck on a carboy, pull a vacuum on a jar, vacuum on a jar, vacuum in a jar, for a vacuum accumulator, as an accumulator, as the reserve, as a reserve, as my reserve, for the reserve, as our reserve, as the reservoir, helium cylinder, helium tank, oxygen cylinder, oxygen bottle, acetylene bottle, acetylene cylinder, co2 cylinder, vac reserve, vacuum reserve, for a vac reserve, with no plate on it, rusty old tank, rusty tank, as a holding tank, as a surge tank, as a buffer tank, holding tank, surge tank, buffer tank, cooler jug, paint tin, old paint tin, paint can, old paint can, biscuit tin, oil drum, lb propane, gallon drum, as a reservoir, jerrycan, jerrycans, for vac reservoir, for a reservoir, as reservoir, for a vacuum reservoir, vac reservoir, freon tank, freon bottle, refrigerant tank, glass jar, glass, jar, mason jar, propane, propane bottle, old propane bottle, propane tank, propane cylinder, gas bottle, gas cylinder, old tank, plastic bucket, paint pot, carboy, demijohn, pressure cooker, beer keg, keg, plastic tank, water bottle, pvc pipe, pvc tank, air tank, compressor tank, unrated tank, lpg bottle, lpg tank, acrylic, plexiglass, plastic drum, steel drum, 55 gallon drum, jam jar, pickle jar, scuba tank, fire extinguisher, water heater, hot water tank, bell jar, plastic bin, water butt, jerry can, plastic barrel, fish tank, aquarium, window pane, thin wall tank, plastic canister, old canister, plastic vessel, plastic keg, plastic pipe, paint pressure pot, pressure pot, paint pressure tank, paint pressure tanks, milk churn, milk can, soda bottle, cola bottle, ammo can, wheelie bin, trash can, garbage can, ice chest, gas can, petrol can, paint kettle, propane cylinders"},
	{kindPeril, "reach in", "lean inside the frame, lean inside the press, lean into the frame, lean into the press, lean over the frame, lean over the press, leaning inside the frame, leaning inside the press, leaning into the frame, leaning into the press, leaning over the frame, leaning over the press, hold the film down by hand, hold the film by hand, hold it down by hand, hold the film down with, hold down the film by hand, film down by hand, arm under, my arm under, hand beneath, reach my hand, slip my hand, nudge a strip, poke it with my finger, hand on the film, hands on the film, fingers on the film, hand on it while, hands on it while, lose a finger, with my hand while, when it closed, with my hand, push them down by hand, push down by hand, hand was in the, strips down by hand, pressing down by hand, grab it while, under the bag while, by hand while it pulls, by hand while, hold the strips by hand, lie in it, get inside, sit inside, reach in, hand in, fingers in, hand under, hands in, stick my hand, put my hand, arm in, hands under, fingers under, finger in, climb in, reach under, reaching in, put my fingers, hand inside, hands inside, push it with my hand, adjust it while, head in, my head in, lean in, arm inside, nudge it, reaching under, reaching into, reach into, reaching inside, reach inside, putting my hand, put a hand, putting a hand, slip a hand, slide my hand, slide a hand, sliding my hand, get my hand, get my fingers, get a finger, poke a finger, poke my finger, sticking my hand, sticking a hand, stick a hand, arm through, hand through"},
	{kindPeril, "wedge release", "hammer the wedge, knock the wedge in, hit the wedge again, drive the wedge more, tap the wedge, knock the wedge out, knock out the wedge, pull the wedge, hit the wedge, knock the wedges out, release the wedge, stand in front of the wedge, pop the wedge, remove the wedge while, knock a wedge out, wedge out while, tap the wedge out, wedges out while, take the wedge out while, loosen the wedge"},
	{kindPeril, "fumes", "bare handed, bad for me, uf dust, sanding dust, glue dust, breathe the, fumes, breathe, breathing, respirator, no mask, without a mask, ventilation, bare hands, barehanded, without gloves, no gloves, gloves, on my skin, mask, mix it bare, skin contact, smell, toxic, poisonous, allergic, rash, formaldehyde, isocyanates, isocyanate, pregnant, headache, dizzy, hands wet with, wash it off with, solvent to clean my hands, acetone, itchy, got epoxy on, dust mask, asthma, asthmatic, got asthma, wheezing, wheeze"},
	{kindPeril, "bypass", "blocked the vent, block the vent, taped over the vent, tape over the vent, taped the vent, plugged the vent, plug the vent, taped over the relief, blocked the relief, disable it, disable the, the alarm, without the second check, without a second check, press without the check, press it unchecked, bypass the relief, block the relief, relief valve, tape over, disable the interlock, bypass, interlock, defeat, jumper the switch, skip the second check, skip the check, safety valve, disable the alarm, override the, pin the valve, wire the switch, cut out switch, tie the switch down, vacuum breaker, guard off, take the guard off, plug the relief"},
	{kindPeril, "structure", "wheelchair, wheelchairs, wheelchair ramp, loading ramp, carries the deck, carries the floor, carries the roof, supports the deck, supports the roof, supports the floor, stair tread, stair treads, structural, beam, load bearing, loadbearing, stairs, ladder rung, guard rail, guardrail, handrail, balcony, joist, rafter, people will stand, hold a person, hold people, hold my weight, hold someone, mast, spar, scaffold, scaffold board, swing, bunk bed, bunk, bridge deck, header, lintel, loft floor, gangplank, gangway, diving board, kids will be on it, hang from, climbing wall, roof beam, ridge beam, keel, support a, hold up a, crane, hoist, lifting, boom, deck beam, staircase, people on it, floor joist, ladder, step ladder"},
	{kindPeril, "electric", "lead is bare, cord is bare, cable is bare, bare pump lead, bare lead, bare cable, frayed cable, frayed cord, wet hands, live wire, extension cord, bare wire, electrocute, electrocuted, standing in water, wire it, wire the pump, rewire, mains wiring, gfci off, no ground, cut the ground, earth pin"},
	{kindPeril, "heat", "heat blanket, heating blanket, heated blanket, heat blankets, heating pad, heat pad, heat mat, heating mat, propane torch, gas torch, a torch on, heat the bag with, torch the bag, heat gun, torch it, blowtorch, hair dryer, heater under, space heater, electric blanket, heat lamp, oven, microwave, open flame, petrol heater, gas heater, propane heater, smoke while, smoking, naked flame, kerosene heater, blow torch, propane torpedo heater, propane torpedo, torpedo heater, propane salamander, salamander heater, diesel heater, oil heater under"},
	{kindPeril, "alone", "running all night, run all night, pumping all night, pulling all night, all night alone, overnight alone, alone overnight, overnight and go home, overnight while i go home, while i go home, while we go home, while im at home, while i sleep, while were asleep, safe to leave it pulling overnight, safe to leave it overnight, safe to leave it on overnight, safe to leave it running overnight, safe to run it overnight, safe to leave overnight, safe overnight, leave it pulling overnight, leave it pumping overnight, nobody there, nobody here, noone there, nobody around, no one there, nobody watching, with nobody in, over the weekend with, leave it all night, leave it over the weekend, left it overnight, run unattended, leave it overnight alone, unattended, leave it running, go home with it, leave the pump running, unsupervised, leave it on overnight, kids in the shop, child, children, keep the kids out, keep the kids away, keep kids out, keep kids away, keep my kids out, keep my kids away, keep the children out, keep the children away, my kid, my son, my daughter, toddler, toddlers"},
	{kindPeril, "overpressure", "put air in the bag, put air in, shop air to, air gun, blow gun, compressed air to, compressed air in, blow air into, reverse the pump, positive pressure, pressurize, pressurise, pump air into, inflate, air line into, blow it up, compressor into, hook the compressor, shop air into"},
	{kindPeril, "standing on it", "kneel on the film, kneel on the membrane, kneel on the press, kneel on the frame, kneel on top of the press, kneel on top of the bag, kneel on the panel while, kneel on top of the film, stand on the film, stand on the membrane, stand on the frame, stand on top of the press, stand on top of the bag, stand on the panel while, stand on top of the film, sit on the film, sit on the membrane, sit on the frame, sit on top of the press, sit on top of the bag, sit on the panel while, sit on top of the film, walk on the film, walk on the membrane, walk on the press, walk on the frame, walk on top of the press, walk on top of the bag, walk on the panel while, walk on top of the film, lean on the film, lean on the membrane, lean on the press, lean on the frame, lean on top of the press, lean on top of the bag, lean on the panel while, lean on top of the film, climb on the film, climb on the membrane, climb on the frame, climb on top of the press, climb on top of the bag, climb on the panel while, climb on top of the film, lie on the film, lie on the membrane, lie on the bag, lie on the press, lie on the frame, lie on top of the press, lie on top of the bag, lie on the panel while, lie on top of the film, jump on the film, jump on the membrane, jump on the bag, jump on the press, jump on the frame, jump on top of the press, jump on top of the bag, jump on the panel while, jump on top of the film, step on the film, step on the membrane, step on the bag, step on the press, step on the frame, step on top of the press, step on top of the bag, step on the panel while, step on top of the film, kneeling on the film, kneeling on the membrane, kneeling on the bag, kneeling on the press, kneeling on the frame, kneeling on top of the press, kneeling on top of the bag, kneeling on the panel while, kneeling on top of the film, standing on the film, standing on the membrane, standing on the bag, standing on the press, standing on the frame, standing on top of the press, standing on top of the bag, standing on the panel while, standing on top of the film, sitting on the film, sitting on the membrane, sitting on the bag, sitting on the press, sitting on the frame, sitting on top of the press, sitting on top of the bag, sitting on the panel while, sitting on top of the film, leaning on the film, leaning on the membrane, leaning on the bag, leaning on the press, leaning on the frame, leaning on top of the press, leaning on top of the bag, leaning on the panel while, leaning on top of the film, lying on the film, lying on the membrane, lying on the bag, lying on the press, lying on the frame, lying on top of the press, lying on top of the bag, lying on the panel while, lying on top of the film, sit on the bag, walk on the bag, kneel on the bag, climb on the bag, sit on the press, climb on the press, lean on the bag, stand on top of, stand on the bag, stand on it, walk on it, sit on it, jump on it, stand on the press, kneel on it, lean on it while, lean on it when, lie on it while, step on it while, kneeling on it while, climb on it, stand on top"},
	{kindPeril, "eye", "in my eye, in my eyes, in his eye, in his eyes, in her eye, in her eyes, in the eye, in their eyes, in someones eye, swallowed some glue, swallowed glue"},
	{kindPeril, "bursting", "about to burst, going to burst, gonna burst, about to pop, about to rip, film is tearing, film is ripping, bag is tearing, bag is ripping, about to let go, about to implode"},
	{kindPeril, "hot pump", "motor is smoking, motors smoking, pump is smoking, pumps smoking, motor smells burnt, pump smells burnt, burnt smell from the pump, burning smell from the pump, motor smells hot, pump smells hot"},
	{kindPeril, "caught", "caught in the press, caught under the film, trapped in the press, trapped under the film, stuck under the film, stuck in the press, caught in the bag, trapped in the bag"},
}

// bodyEntries are the wordings of someone who is held by the press, or may be.
func bodyEntries() []entry {
	var said []string
	for _, part := range []string{"hand", "hands", "finger", "fingers", "thumb", "arm", "sleeve", "wrist", "foot", "leg", "hair", "glove"} {
		for _, held := range []string{"got caught", "is caught", "are caught", "got stuck", "is stuck", "are stuck", "stuck under", "stuck in", "got trapped", "is trapped", "are trapped", "trapped under", "trapped in", "got pulled", "got sucked", "got pinched", "got pinned", "is pinned", "are pinned", "pulled under", "sucked under", "sucked in", "pinned under", "pinched", "pinched in", "pinched under", "pinched between", "caught in", "caught under", "caught between", "crushed", "jammed under", "jammed in"} {
			said = append(said, part+" "+held)
		}
	}
	for _, part := range []string{"hand", "hands", "finger", "fingers", "thumb", "arm", "sleeve"} {
		for _, whose := range []string{"my", "his", "her", "the"} {
			said = append(said, "cant get "+whose+" "+part, "cant pull "+whose+" "+part, "cannot get "+whose+" "+part)
		}
	}
	var near []string
	for _, part := range []string{"hand is", "hands are", "fingers are", "arm is", "hand", "hands", "fingers"} {
		for _, on := range []string{"fine in the bag", "ok in the bag", "okay in the bag", "safe in the bag", "in the bag while", "in the bag under", "inside the bag", "under the film", "fine under the film", "on the sled while", "on the sled", "on the strips while", "on the bar while", "on the caul while", "on the panel while", "on the work while", "on the film while", "between the sleds"} {
			near = append(near, part+" "+on)
		}
	}
	return []entry{{kindPeril, "caught", strings.Join(said, ", ")}, {kindPeril, "reach in", strings.Join(near, ", ")}}
}

// entering are ways of somebody to get into a bag.
var entering = wordSet(`be get gets getting lie lies lying lay sit sits sitting sleep sleeps climb climbs climbing crawl crawls crawling hop hops go goes hide hides play plays step squeeze`)

// lying is of people in a press, where strips only go in and get in.
var lying = wordSet(`lie lies lying lay sit sits sitting sleep sleeps climb climbs climbing crawl crawls crawling hide hides`)

// somebody is who gets there.
var somebody = wordSet(`i we he she you me him her myself kid kids child person people someone somebody anyone guy lad boy girl apprentice`)

// getsInside: "can I get in the bag myself", "my kid wants to lie inside the bag";
// not "what vacuum do I get in the bag".
func (r *reader) getsInside() bool {
	if !r.says("in", "inside", "into") || !r.means(kindNoun, "bag", "frame", "press") {
		return false
	}
	for i := 1; i+2 < len(r.items); i++ {
		k := i + 1
		for r.word(k, "down") {
			k++
		}
		if !r.word(k, "in", "inside", "into") || !entering[r.items[i].word] {
			continue
		}
		for k++; r.word(k, "of", "the", "a", "my", "our", "that", "vacuum"); k++ {
		}
		who := i - 1
		for r.word(who, "can", "could", "may", "might", "should", "will", "would", "cant") {
			who--
		}
		if r.word(who, "ok to", "safe to", "fine to") || r.word(who, "to") && who > 0 && somebody[r.items[who-1].word] || r.word(who, "to") && r.word(who-1, "ok", "okay", "safe", "want", "wants", "wanted", "like", "likes", "try", "trying", "going", "dangerous", "fine") {
			return r.is(k, kindNoun, "bag") && !r.opensWithin(0, i, "what", "how", "which")
		}
		if (r.is(k, kindNoun, "bag") || r.is(k, kindNoun, "frame", "press") && lying[r.items[i].word]) && (somebody[r.items[who].word] || r.is(who, kindPerson)) && !r.opensWithin(max(0, who-5), who, "what", "how", "which", "whats", "much", "do") {
			return true
		}
	}
	return false
}

// worstFirst puts somebody in a bag before all else that is asked.
func (r *reader) worstFirst() {
	switch {
	case r.getsInside():
		r.phrase.Asks = append([]Ask{{About: Safety, Peril: "inside"}}, r.phrase.Asks...)
	case r.potHeats():
		r.phrase.Asks = append([]Ask{{About: Safety, Peril: "hot pot"}}, slices.DeleteFunc(r.phrase.Asks, func(a Ask) bool { return a.Peril == "heat" })...)
	case r.pumpHot():
		r.phrase.Asks = append([]Ask{{About: Safety, Peril: "hot pump"}}, slices.DeleteFunc(r.phrase.Asks, func(a Ask) bool { return a.Peril == "heat" })...)
	case r.sandsSafely():
		r.phrase.Asks = append([]Ask{{About: Safety, Peril: "fumes"}}, r.phrase.Asks...)
	case r.bearsDown() && !r.asksFor(Safety):
		r.phrase.Asks = append([]Ask{{About: Safety, Peril: "standing on it"}}, r.phrase.Asks...)
	case r.handsWhile() && !r.asksFor(Safety):
		r.phrase.Asks = append([]Ask{{About: Safety, Peril: "reach in"}}, r.phrase.Asks...)
	case !r.asksFor(Safety) && r.seenDanger() != "":
		r.phrase.Asks = append([]Ask{{About: Safety, Peril: r.seenDanger()}}, r.phrase.Asks...)
	case slices.Contains(r.phrase.Perils, "reach in"): // before "my kid", who is no worse off than his hand
		at := slices.IndexFunc(r.phrase.Asks, func(a Ask) bool { return a.Peril == "alone" })
		if at >= 0 {
			r.phrase.Asks[at].Peril = "reach in"
		}
	}
}

// buckets: a bucket is a label to read of, or a vessel.
func (r *reader) buckets() {
	if !r.says("bucket", "buckets", "pail") {
		return
	}
	for i := range r.items {
		if r.is(i, kindRole, "label") && r.word(i, "bucket", "buckets", "pail") && r.emptied(i) && !r.is(i+1, kindSay) {
			r.items[i].meaning = meaning{kind: kindPeril, id: "vessel"}
			r.hear(i)
		}
	}
}

// catchers are what stands in a pump's hose and is emptied of air with it.
var catchers = []string{"trap", "traps", "catch", "catchpot", "knockout", "lid"}

// emptied: a bucket that is pumped out, or stands in the hose, is in danger; one of glue
// is not.
func (r *reader) emptied(i int) bool {
	if r.word(i+1, "of", "with") {
		return false
	}
	from, to := r.clause(i)
	if reads := r.word(i+1, "reads", "label") || r.is(i+1, kindSay); reads && !r.opensWithin(from, to, catchers...) {
		am := r.items[min(i+2, len(r.items)-1)].amount
		return am != nil && am.is(unit.Pressing) // "the pail reads 20 inHg" is no label
	}
	for k := from; k < to; k++ {
		if am := r.items[k].amount; am != nil && am.is(unit.Pressing) || r.is(k, kindVacuum) || r.is(k, kindNoun, "pump", "leak") || r.word(k, catchers...) {
			return true
		}
	}
	return false
}

// threatens reports whether a danger word is about the press: an oven may be for
// a cake.
func (r *reader) threatens(id string) bool {
	switch id {
	case "hot pump", "reach in", "wedge release", "bypass", "standing on it", "alone", "eye", "bursting", "caught", "inside":
		return true
	case "structure":
		return r.wordIn("for", "ok", "okay", "hold", "holds", "strong", "safe", "support", "carry", "stand", "take", "bear", "kids", "trust", "enough") || r.mentions(kindVerb, "hold")
	}
	if id == "heat" && r.ovenAside() {
		return false
	}
	if r.wordIn("reservoir", "reserve", "accumulator") || id == "vessel" && (r.wordIn(catchers...) || r.pumping()) || r.countKind(kindPeril) > 1 {
		return true
	}
	for i := range r.items {
		if am := r.items[i].amount; am != nil && am.is(unit.Pressing) || r.is(i, kindUnit) && r.items[i].unit.Dimension == unit.Pressing {
			return true
		}
		if strings.Contains(r.items[i].word, "inhg") || strings.Contains(r.items[i].word, "vac") {
			return true
		}
		switch r.items[i].kind {
		case kindNoun:
			if r.items[i].id != "panel" || r.items[i].word != "plate" {
				return true
			}
		case kindGlue, kindVacuum, kindWood:
			return true
		}
		if r.word(i, "glue", "pressing", "clamp") {
			return true
		}
	}
	return false
}

// glassThing: "glass table top customer", "under a glass shelf", "a glass-topped table" are
// of furniture.
func (r *reader) glassThing(i int) bool {
	if r.word(i-1, "magnifying", "hour") || r.word(i-1, "sight", "safety") && !r.holdsVacuum(i) {
		return true
	}
	if k := i + 1; r.items[min(k, len(r.items)-1)].brk == '-' || r.word(k, glassed...) {
		if !r.word(k, glassed...) {
			k++
		}
		if r.word(k, glassed...) && !r.is(k+1, kindNoun, "press", "frame", "bag", "reservoir") && !r.word(k+1, "lid", "box", "tank") {
			return true
		}
	}
	if r.mentions(kindVacuum) || r.pressureSaid() || r.pumping() || r.wordIn(catchers...) || !r.percentSaid() && r.within(0, len(r.items), kindWood) < 0 {
		return false
	}
	return r.is(i+1, kindNoun, "panel", "bed") && !r.word(i+1, "lid", "lids") || r.word(i+1, "shelf", "shelves", "front", "fronts", "case", "cabinet", "fronted", "insert", "pane", "panes")
}

// glassed are what a piece of furniture is that has glass somewhere.
var glassed = []string{"topped", "fronted", "doored", "sided", "paneled", "panelled", "shelved", "faced"}

// nobodyKnows: "nobody here knows" leaves no press to itself.
func (r *reader) nobodyKnows(i int) bool {
	return strings.HasPrefix(r.items[i].word, "nobody ") && r.word(i+1, "knows", "know", "knew", "remembers", "told", "agrees", "believes", "says", "said")
}

// ovenAside: "the oven in the break room is broke, anyway: 6 strips …" heats no press.
func (r *reader) ovenAside() bool {
	seen := false
	for i := range r.items {
		if !r.is(i, kindPeril) {
			continue
		}
		from, to := r.clause(i)
		if !r.word(i, "oven", "an oven", "the oven") || r.within(from, to, kindNoun) >= 0 || r.within(from, to, kindGlue) >= 0 || r.opensWithin(from, to, "it", "them", "this", "these", "in the", "put", "use", "can", "could") {
			return false
		}
		if !r.opensWithin(from, to, "broke", "broken", "kitchen", "break", "lunch", "canteen") {
			return false
		}
		seen = true
	}
	return seen
}
