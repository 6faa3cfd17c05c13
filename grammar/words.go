package grammar

// kind is the part that a word of the trade plays in a message.
type kind uint8

const (
	kindNone     kind = iota
	kindNoun          // a part of the load or the press: strip, bar, mat
	kindAttr          // a direction of measuring: wide, thick, long
	kindWood          // a species of the wood table
	kindWoodSort      // how wood looks or was dried; says nothing that is computed
	kindGlue          // a class of the glue table
	kindFact          // a word that states a field by itself: "quartersawn"
	kindUnit          // a unit, behind a number or alone
	kindNumber        // a number in words
	kindAsk           // a cue of what is asked
	kindVacuum        // vacuum, gauge, dial, pulling
	kindAir           // rh, humidity, mc, moisture, barometer, elevation, temperature
	kindNot           // no, without, not
	kindFix           // sorry, make that, correction
	kindSay           // says, reckons, told me
	kindPerson        // buddy, boss, they
	kindRole          // what a number is for: trim, start, deadline, label, count of
	kindVerb          // a verb of the load book
	kindFill          // words that add nothing
	kindPeril         // a danger
	kindStock         // a list of strips in stock
)

// entry is one meaning and the ways of saying it, parted by commas.
type entry struct {
	kind kind
	id   string
	said string
}

// vocabulary is every word of the trade that the grammar knows, but for units,
// numbers and dangers, which have tables of their own.
var vocabulary = []entry{
	// Parts. A part that is a kind of press says so too.
	{kindNoun, "strip", "stroken, strook, stuks, lamellen, planken, strip, strips, latten, stave, staves, slat, slats, piece, pieces, pcs, pc, board, boards, lamella, lamellas, lamellae, lam, lams, lamination, laminations, laminate, laminates, rip, rips, plank, planks, stick, sticks, stile, stiles, batten strips, edge strips, wood strips, stuff, bds, bd, brds, boards each, offcuts, offcut, bits, lath, laths, stock"},
	{kindNoun, "panel", "cabinet side, cabinet sides, cabinet doors, cabinet backs, cabinet ends, carcass sides, carcase sides, bookcase sides, drawer fronts, drawer bottoms, table leaves, table leaf, top out of, panel out of, tops out of, panel, panels, panelen, paneel, pannel, pannels, glue up, glue ups, glueup, glueups, top, tops, tabletop, tabletops, table top, table tops, tables, dining table, dining tables, coffee table, coffee tables, kitchen table, kitchen tables, side tables, end tables, bedside tables, door, doors, lid, lids, slab, slabs, sheet, sheets, hatch, hatches, hatch cover, hatch covers, counter, counters, countertop, countertops, counter top, worktop, worktops, bench top, benchtop, tread, treads, bulkhead, bulkheads, leaf, leaves, cutting board, cutting boards, blanks, door blanks, door blank, door leaves, door leaf, stair tread panels, desk top, desktop, shelf, shelves, plate, sole panel, sole panels, pnl, pnls, benchtops, bar top, bar tops, bartop, island top, vanity top, desk, desks, drawer front, drawer side, drawer sides, apron, aprons, plinth, plinths, headboard, headboards, footboard, box lid, box lids, shutter, shutters, gate panel, pantry door, pantry doors"},
	{kindNoun, "bar", "bar, bars, side bar, side bars, sidebar, sidebars, batten, battens, edge bar, edge bars, pressure bar, push bar, side batten, side battens, edge batten, press bar, upstand, upstands, edge rail, edge rails, rail along the edge, rail on the edge, push rail, pusher bar, edge stick, steel bar, alu bar, aluminium bar, aluminum bar, side rail"},
	{kindNoun, "wedge", "wedge, wedges, folding wedge, folding wedges, taper, tapered wedge"},
	{kindNoun, "sled", "sled, sleds, top sled, upper sled, bottom sled, lower sled, second sled, next sled, sledge, carrier, carrier board, base, bases, base board, baseboard, platen sled"},
	{kindNoun, "fence", "fence, fences, fence board, fence boards, fence strip, fence rail, fence batten, stop fence, edge fence, side fence"},
	{kindNoun, "mat", "cork, cork sheet, cork mat, cork pad, neoprene, neoprene sheet, neoprene mat, neoprene pad, rubber sheet, felt pad, felt mat, silicone sheet, silicone mat, felt sheet, sponge rubber, carpet pad, carpet underlay, mat, mats, foam mat, rubber mat, cushion, pad, foam pad, foam, soft mat, blanket"},
	{kindNoun, "caul", "caul, cauls, top caul, platen, platens, caul sheet, caul board, cover board, pressure plate"},
	{kindNoun, "film", "film, films, sheet of film, sheets of film, sheet of plastic, sheet of poly, layer of film, layer of plastic, foil, foils, plastic foil, pe foil, plastic, plastic film, plastic sheet, poly film, poly sheet, release film, membrane"},
	{kindNoun, "core", "core, cores, substrate, substrates, ply, plywood, mdf, particleboard, particle board, chipboard, hardboard, ply core, plywood core, mdf core, solid core, birch ply, birch plywood, marine ply, marine plywood, baltic birch ply, baltic birch plywood, okoume ply, fir ply, fibreboard, fiberboard, baltic birch"},
	{kindNoun, "bed", "bed, beds, table, press bed, press table"},
	{kindNoun, "frame", "frame, frames, frame press, vacuum frame, press frame, frame presses, chamber, vacuum chamber, vac frame"},
	{kindNoun, "bag", "bag, bags, vacuum bag, vac bag, bag press, vacuum bags, bag presses"},
	{kindNoun, "press", "press, presses, vacuum press, vacuum presses, vac press"},
	{kindNoun, "opening", "inside height of the frame, inside height of the press, inside height, internal height, of headroom, of room, opening, throat, opening in the press, opening of the press, opening in the frame, opening of the frame, opens, opens up, press opens, frame opens, opens to, press opening, openings, clear height, of clearance, daylight, clearance height, frame opening, opening height, press height, headroom"},
	{kindNoun, "joint", "jnt, jnts, joint, joints, jt, jts, seam, seams, glue line, glue lines, glueline, gluelines"},
	{kindNoun, "gap", "gap, gaps, crook, crooks, open gap, joint gap, worst gap, bowed edge, hollow edge, sprung joint, light"},
	{kindNoun, "cup", "cup, cups, cupped, cupping, hump, belly, crown, crown in it, crowned, crowning, domed, bellied, hollow, cups, dished, dish"},
	{kindNoun, "bow", "bow, bows, bowed"},
	{kindNoun, "tent", "tent, tents, tenting, tented, bridge, bridges, bridging, bridged"},
	{kindNoun, "pump", "pump, vac pump, vacuum pump, pumps"},
	{kindNoun, "reservoir", "reservoir, tank, receiver"},
	{kindNoun, "face", "face, faces, veneer, veneers, facing, facings, skin, skins"},
	{kindNoun, "leak", "leaky, leaks down, leak, leaks, leaking, leakage, loses, losing, drops, dropping, creeps, bleeds, bleeding, falls, falling, lost, loss, leak rate, leakdown, leak down, drop"},
	{kindNoun, "door", "porthole"},

	// Directions of measuring.
	{kindAttr, "wide", "breed, breedte, broad, across the face, across the flat, wide, width, widths, in width"},
	{kindAttr, "thick", "dik, dikte, on the edge, on edge, in thickness, thick, thk, thickness, thicknesses, in thickness"},
	{kindAttr, "long", "lang, lengte, long, length, lengths, lg, in length"},
	{kindAttr, "tall", "tall, high, height, hgt, ht, in height, proud, upright"},
	{kindAttr, "deep", "deep, depth"},
	{kindAttr, "thickest", "thickest, thickest strip, thickest one, fattest"},
	{kindAttr, "thinnest", "thinnest, thinnest strip, thinnest one, skinniest"},

	// How wood is sawn and which side is up.
	{kindFact, "sawn=flat", "sawn flat, cut plain, sawn plain, flat cut, plain cut, cut flat, flat sawn, flatsawn, plain sawn, plainsawn, flat saw, crown cut, crown sawn, slab sawn, through and through, tangential, backsawn, back sawn, back cut, fs, f/s, flatsawed, cathedral grain"},
	{kindFact, "sawn=quarter", "sawn quarter, quarter cut, cut on the quarter, on the quarter, quarter sawn, quartersawn, q sawn, qtr sawn, quartered, rift and quarter, rift, riftsawn, rift sawn, radial, quarter saw, qs, q/s, qsawn, qtrsawn"},
	{kindFact, "faces=2", "with a backer, backer on the other side, backer on the back, a backer on the other side, a backer on the back, with a backer on the other side, with a backer on the back, with a backing veneer, with a balancing veneer, with a balance veneer, with a balancing face, add a backer, put a backer on, put a backer on it, put a backer on the back, backer veneer on the back, balancer on the back, with a balancer, same on the back, same on the other side, same on the other face, same on the underside, same on the reverse, one on the back too, one on the back as well, do the back too, do the back as well, face the back too, balance it on the back, veneer the back too, back it with the same, both sides, both faces, two faces, two sides, either side, each side, per side, each face, both front and back, front and back, double sided, 2 faces, 2 sides, top and bottom, do both sides, do both faces, press both sides, press both faces, glue both sides, glue both faces"},
	{kindFact, "faces=1", "one face, one side, one sided, single sided, 1 face, 1 side, top only, only the top, on top only, single face, no backer, one side only, just the one side, just one side, no backing veneer, no balancer, nothing on the back, nothing on the other side, nothing on the other face, nothing on the bottom, bare back, back bare, back left bare, back is bare, no back veneer, no balance veneer, no balancing face, no balancing veneer, skip the balancing face, skip the balancing veneer, skip the backer, skip the back veneer, without a backer, without a balancing face, unbalanced, one sided job"},
	{kindFact, "cover=down", "film gets down behind it, film gets down behind, film gets behind it, film gets behind the bar, film goes down behind, film down behind, film drops behind, film gets in behind, film on both sides of the bar, bag gets down behind it, bag gets down behind, bag gets behind it, nothing behind the bar, nothing behind it"},
	{kindFact, "cover=top", "cover the bar to the top, cover it to the top, cover the whole bar, to the top of the bar, covered to its top, covered to the top, fully covered, covered to its full height, covered all the way"},
	{kindFact, "wedge_again=yes", "driven again just before the vacuum, driven again, driven once more, drive it again, redriven, re driven, drive them again, knocked in again, knocked up again, tapped again, driven up again"},
	{kindFact, "bar=none", "nothing along the edge, nothing along the edges, nothing at the side, nothing at the sides, nothing on the edge, anything along the edge, anything along the edges, anything at the side, nothing from the side, nothing pushing from the side"},
	{kindFact, "surface=film", "plastic foil under, plastic foil underneath, pe foil under, foil under, foil underneath, polythene under, polythene underneath, polythene beneath, polythene below, polythene under them, polyethylene under, polyethylene underneath, pe film under, pe film underneath, plastic sheet under, plastic sheet underneath, plastic sheeting under, plastic sheeting underneath, poly underneath, poly beneath, plastic beneath, plastic film under, plastic film underneath, plastic film beneath, film under them, film beneath them, film underneath them, poly under them, plastic on it, film on it, plastic on the sled, film on the sled, on plastic, on film, on poly, on polythene, on polyethylene, on plastic sheet, on plastic film, on pe film, on pe, over plastic, plastic under, plastic underneath, film is under, plastic is under, film is underneath, film under, film underneath, on the plastic, on the film, plastic under them, plastic lined sled, plastic covered sled, poly under, plastic below, film below, film beneath, film between, on packing tape, poly sheeting, film down, plastic down, poly down, film laid down, film first"},
	{kindFact, "surface=waxed", "rubbed with wax, rubbed down with wax, waxed up, waxed down, waxed, wax the sled, wax it, waxing the sled, wax on it, waxed sled, on wax, waxed base, wax on the sled, wax on the sleds, wax on sleds, wax on our sleds, wax on my sled, we use wax, i use wax, using wax, used wax, wax the sleds, paste wax, waxed ply, waxed melamine, waxed paper, wax paper"},
	{kindFact, "surface=bare", "sled is bare, sleds are bare, sled bare, bare underneath, bare under them, bare under the strips, bare sled, bare ply, bare plywood, bare mdf, bare wood, bare board, bare ply sled, bare plywood sled, bare mdf sled, on bare wood, no film, no film under, no plastic, no plastic under, nothing under them, nothing underneath, no wax, without film, without plastic, dry ply, raw ply, unwaxed, on bare ply, on bare, naked ply, no film underneath"},
	{kindFact, "surface=wet-glue", "wet glue, on wet glue, on a glued core, in wet glue"},
	{kindFact, "gap=0", "no daylight, no light through, hand tight, close by hand, closes by hand, closing by hand, close hand tight, closes hand tight, no gaps, no gap, zero gap, joints close, close up by hand, tight by hand, light tight, dead tight, fit tight, perfect fit, joints are tight, joints fit tight"},
	{kindFact, "trim=0", "nothing to trim, nothing to trim off, no trimming, no trimming needed, nothing to come off, nothing to plane off, nothing to joint off, nothing to clean up, no cleanup cut, no clean up cut"},
	{kindFact, "tent=0", "no tenting, no tent, without tenting, doesnt tent, does not tent, no bridging, not tenting, isnt tenting, right down in the corner, tight in the corner, tight into the corner, down in the corner, zero tenting, doesnt bridge, does not bridge, isnt bridging"},

	// Vacuum and air.
	{kindVacuum, "vacuum", "vacuum, underpressure, under pressure of, depression, vac, vacs, suction, under vacuum, of vacuum, of vac, hg vacuum"},
	{kindVacuum, "gauge", "gauge, manometer, vacuometer, dial, needle, needles, gauges, vacuum gauge, vac gauge, gage"},
	{kindVacuum, "pull", "isolate it at, isolated it at, isolate at, isolated at, valve it off at, valved off at, valved it off at, pulling, pullin, pulls, pull, vac to get to, pulled, draws, drawing, holding at, sitting at, sat at, sits at, holds at, sucking, running at, reading, reads, shows, showing, is showing, pull down to, pump down to, get to, gets to, down to, pull it to, pull to, drawing down to"},
	{kindVacuum, "absolute", "abs, absolute, bara, abs pressure, absolute pressure, abs., abs gauge reads, absolute gauge reads, abs gauge, absolute gauge"},
	{kindAir, "rh", "humidify, humidifies, humidified, humidifying, humidifier, humidifiers, humidistat, dehumidify, dehumidifies, dehumidified, dehumidifying, dehumidifier, dehumidifiers, dehu, rel . humidity, rel humidity, rel . hum ., r . h ., r . h, rh, rv, hygrometer, r h, relative humidity, humidity, humid, hum"},
	{kindAir, "mc", "mc, mcs, m c, moisture, moisture content, wood moisture, moisture meter, meter, damp meter, dried to, kiln dried to, kd to"},
	{kindAir, "barometer", "glass is down to, glass is at, glass reads, glass says, glass shows, glass has dropped to, barometer, barometers, baro, baros, barometric, barometric pressure, air pressure, station pressure, atmospheric pressure, ambient, atmospheric, ambient pressure"},
	{kindAir, "height", "elevation, altitude, above sea level, asl, sea level, up here at, amsl, up at, elev, alt, masl"},
	{kindAir, "service", "bakery, brewery, laundry room, laundromat, greenhouse, sauna, going to a place, goes to a place, going to some place, going somewhere, off to a place, headed to a place, moving to a place, ends up in a place, going into a place, goes into a place, goes aboard, going aboard, aboard, below decks, on board, porch, screened porch, screen porch, screened in porch, covered porch, sun porch, sunporch, back porch, front porch, veranda, verandah, patio, mudroom, mud room, garden room, orangery, entryway, foyer, the coast, down the coast, seaside, by the sea, near the sea, ends up in, will live in, lakehouse, lake house, beach house, farmhouse, cottage, condo, basement, attic, sunroom, house, home, lives, lives at, living room, kitchen, customer, customers, client, clients, room, service, in use, in service, lives in, live in, living in, her place, his place, their place, my place, hallway, hangs in, bathroom, live at, live, a flat in, their flat, a flat, the flat, end use, office, cabin, saloon, winter, summer, indoors, dining room, apartment, ends up, heated room, heated, final, destination, goes to, church, museum, gallery, bedroom, showroom, install, installed, it goes in, headed for, headed to, bound for, destined for, desert, winds up in, shipping to, going to live in, restaurant, cafe, café, bistro, pub, hotel, lobby, clinic, hospital, library, chapel, winters, summers, by spring, come spring, next spring, by autumn, come autumn, come fall, by fall, wintertime, summertime, hung at, hung in, hangs at, ending in, ends in, ending at, ending up in, ending up at, ends up at, place is, place sits, lounge, sitting room, conservatory, bungalow, chalet, villa, penthouse, holiday home, family room, nursery"},
	{kindAir, "shop", "out here, shop, shops, workshop, in here, here, in the shop, room temp, our shop, glue room, press room, pressroom, joinery, shed, garage, workshops, barn, yard"},
	{kindAir, "temp", "heater, heaters, heater has, woodstove, furnace, thermometer, thermostat, the heat, heating, temp, temperature, temps, degrees, deg, warm, cold, hot, degree, freezing, chilly, nippy, roasting, sweltering, stifling, toasty, boiling hot, baking hot"},

	{kindFill, "elsewhere", "drop table, delete from, insert into, select from, update table, leg press, bench press, bench pressing, french press, coffee press, cider press, apple press, garlic press, printing press, flower press, trouser press, press release, press conference, press ups, push ups, leaf blower, leaf spring, wine press, olive press, tofu press, tortilla press, press box, picture frame, picture frames, photo frame, photo frames, door frame, door frames, window frame, window frames, bed frame, bed frames, bike frame, bike frames, time frame, door mat, door mats, yoga mat, yoga mats, bath mat, bath mats, camping mat, camping mats, floor mat, floor mats, car mat, car mats, place mat, place mats, mouse mat, mouse pad, launch pad, heating pad, brake pad, brake pads, knee pad, knee pads, king bed, queen bed, twin bed, double bed, flower bed, flower beds, raised bed, raised beds, garden bed, garden beds, veg bed, vegetable bed, tomato bed, river bed, hospital bed, bunk bed, bunk beds, bed and breakfast, truck bed, sump pump, sump pumps, water pump, water pumps, fish pump, heat pump, heat pumps, petrol pump, gas pump, gas pumps, breast pump, bike pump, bicycle pump, tyre pump, tire pump, fuel pump, insulin pump, pool pump, oil leak, oil leaks, gas leak, gas leaks, water leak, water leaks, roof leak, roof leaks, tap leaks, tap leak, fuel leak, bar of soap, bars of soap, soap bar, chocolate bar, chocolate bars, candy bar, candy bars, protein bar, protein bars, bar tab, bar exam, bar stool, bar stools, tow bar, crow bar, salad bar, snack bar, sports bar, wine bar, comic strip, comic strips, led strip, led strips, strip mall, strip club, power strip, power strips, strip light, memory core, memory cores, apple core, core workout, deck board, deck boards, fence panel, fence panels, fence post, fence posts, knee joint, hip joint, tea cup, world cup, cup final, cup size, needle size, took a bow, take a bow"},
	{kindFill, "tool", "table saw, table saws, tablesaw, panel saw, router table, router tables, drum sander, drum sanders, belt sander, wide belt, wide belt sander, chop saw, miter saw, mitre saw, track saw, band saw, bandsaw, radial arm saw, skill saw, circular saw, pipe clamp, pipe clamps, bar clamps, bar clamp, c clamp, c clamps, g cramp, g cramps, sash cramp, sash cramps, sash clamp, sash clamps, dead blow, dead blow hammer"},
	{kindFill, "", "close it off, closes it off, to close it off, close it all off, is dead on, are dead on, is bang on, are bang on, it turns out, as it turns out, it turns out that, turns out that, shelf life, storage life, two stroke, 2 stroke, when its at home, when it is at home, half length, at half length, halfway along, half way along, half way down, at half height, settle for, cut list, cutting list, of the two, of these two, out of the two, on the face of it, face it, by the way, mid length, at mid length, midlength, mid span, as it were, for good measure, at the end of the day, all over the shop, on top of that, about face, in the face of, vacuum seal, vacuum sealer, vacuum sealing, vacuum sealed, vac seal, vac sealed, vacuum pack, vacuum packed, vacuum packing, sous vide, vacuum cleaner, pan out, pans out, panning out, shape up, shaping up, how does that look, how does it look"},

	// Negation, correction, hearsay.
	{kindNot, "no", "no, without, w/o, w o, scratch the, sans, none, minus the, lose, ditch, forget, drop, skip, remove, leave out, leave off, take out, take away, ignore, never mind, nevermind, scrap, zero, leave off the, forget about, dont use, not using, except, except for, excluding, other than, instead of, rather than"},
	{kindNot, "not", "not, isnt, arent, dont, doesnt, wasnt, werent, aint, cant, cannot, wont, never, havent, hasnt, didnt"},
	{kindFix, "fix", "nah, naw, sorry, make that, make it, scratch that, correction, i mean, i meant, meant, no wait, wait no, wait, hang on, no hang on, actually, oops, my bad, rather, strike that, change that to, should be, should say, typo, pardon, are actually, is actually, no its, no sorry, er no, hold on, no actually, better say, beg your pardon, my mistake, whoops, nope, instead, thats wrong, to be exact, its actually, or rather, let me correct that, misread, i misread, no hang about, hang about"},
	{kindSay, "say", "says, saying, keeps saying, said, reckons, reckon, thinks, told, tells, swears, claims, claimed, heard, read somewhere, recommends, recommend, recommended, suggest, suggests, suggested, insists, insisted, guessed, guesses, bets, wants, used, always uses, uses, ran, runs, did, does, swore"},
	{kindPerson, "person", "radio, weatherman, weather man, the forecast, forecast, telly, the news, weather app, the app, old timer, old timers, old fella, buddy, partner, lab partner, shop teacher, boss, uncle, guy, dude, friend, mate, he, she, they, someone, somebody, forum, video, internet, brother, dad, grandpa, grandad, old man, instructor, teacher, coworker, neighbour, neighbor, foreman, bloke, lad, book, article, the other guy, everyone, everybody, people, some guy, colleague, apprentice, salesman, rep, supplier, rumour, magazine, cousin, father, mother, wife, husband, roommate, my old shop, other shop, last shop, shop down the road, shop up the road, shop across town, shop across the street, shop next door, shop i worked at, shop i used to work at, shop i was at, place i worked, guys down the road, guys next door, guys across town, lads next door, lads down the road, people next door, fella, fellow, competition, competitor, competitors, the other crew, the other shift, night shift guys, day shift guys, gaffer, old boss"},
}
