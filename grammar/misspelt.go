package grammar

import (
	"strings"

	"github.com/hbollon/go-edlib"
)

// nearest holds the trade's single words by their first letter, for words that
// are misspelt. Units and numbers are never guessed.
var nearest = buildNearest()

type spelled struct {
	word    string
	meaning meaning
}

const (
	shortest    = 4  // letters of a word that may be taken for another
	longWord    = 10 // letters from which two slips are forgiven
	mostGuesses = 24 // words of one message that are looked up
	mostLetters = 20
	oneSlip     = 1
	twoSlips    = 2
)

func buildNearest() map[byte][]spelled {
	index := map[byte][]spelled{}
	for first, list := range trade {
		if len(first) <= shortest {
			continue
		}
		for _, s := range list {
			switch s.meaning.kind {
			case kindNoun, kindAttr, kindWood, kindGlue, kindVacuum:
				if len(s.words) == 1 && !plainTargets[first] && s.meaning.id != "pull" {
					index[first[0]] = append(index[first[0]], spelled{first, s.meaning})
				}
			}
		}
	}
	return index
}

// guess returns the trade word that an unknown word misspells, where there is
// just one meaning within reach: one slip, or two in a long word.
func guess(w string) (spelled, bool) {
	if len(w) < shortest || len(w) > mostLetters || lookalikes[w] || strings.ContainsAny(w, "0123456789") {
		return spelled{}, false
	}
	reach := oneSlip
	if len(w) >= longWord {
		reach = twoSlips
	}
	best, found, tie := spelled{}, reach+1, false
	for _, s := range nearest[w[0]] {
		if d := len(s.word) - len(w); d > reach || -d > reach {
			continue
		}
		d := edlib.OSADamerauLevenshteinDistance(w, s.word)
		switch {
		case d < found:
			best, found, tie = s, d, false
		case d == found && s.meaning != best.meaning:
			tie = true
		case d == found && s.word < best.word:
			best = s
		}
	}
	return best, found <= reach && !tie
}

// guessGlue returns the sort of glue that a word misspells right before "glue",
// where the words that too many others are like can be nothing else.
func guessGlue(w string) (spelled, bool) {
	for _, sort := range [...]string{"white", "yellow", "hide"} {
		m, n := trade.longest([]scrap{{shape: shapeWord, norm: sort}, {shape: shapeWord, norm: "glue"}}, 0)
		if len(w) >= shortest && n > 0 && m.kind == kindGlue && edlib.OSADamerauLevenshteinDistance(w, sort) == oneSlip {
			return spelled{sort, m}, true
		}
	}
	return spelled{}, false
}

// plainTargets are trade words that too many plain words are a slip away from.
var plainTargets = wordSet(`stroken strook stuks lamellen planken breed breedte dikte lengte white yellow taper tapers tread treads counter counters sleds leaf leaves chipboard fiberboard fibreboard hardboard cover table frame frames plate plates platen light bridge bridges falls falling drops dropping sheet sheets sticks boards plank planks stock press presses hide bases losing bleeds blanket headroom hatch hatches shelf`)

// lookalikes are plain words one slip away from a trade word.
var lookalikes = wordSet(`coat coats state states stated stating statement weight weights weigh strap straps stripe stripes tripe paned panes paneled flame flames framed frames ledge ledges hedge wedged sedge batter fatten bitten batteries beach leech bench breech bitch elder older alter alders sherry cheery berry slate slates stats plank blank blanks stove starve starved shave stage boars boarded boarding bored bases basis based basic battle button buttons cores cored score cover lover hover coved bowls elbow cauls calls falls walls halls mates maths paths pants plates plated plays plane planes planet plans planks glued glues glows gluey cedars chair chairs chain chains charm cheap cheese shed fence fenced hence pence fences gauze guard guards vaccine vacant vacation opens opened openly tented tenth tents tense tight tights light lights night right rights might fight ashes clash crash flash wash ash birth church march merch larch bunch pinch inch itch loads load loaded leaks leaky learn pumps pumped jumps dumps lumps presses pressed pressure dress press-ups epoxied taking times tiles tells maker makes marks marble mabel apple ample purple people staple stable table tables bible cable fable able lying dying faces faced facts paces places palace laces races surface surfaces depths death width breadth wealth health length lengthy strength tall tally hall ball wall thick thicken thin think thing things thigh thighs ticket trick brick flick along alone lung hung long longer lunge wider winder wilder widen water waste waist paste taste haste moister moistened hoist humble humidor humility rested rooms roomy shop shops shoppe shopping chop show shows short shirt shore share shape slot slots slob stab stabs slap scab crab needle noodle needles dialed deal deals dials diary trial trials drill grill still stall small smell spell shell swell piece pieces peace carried carries codes files join joins leaving limitation limitations receive received receives section sections skips stale tested testing tests texts text texted texting cook cooks cooked cooking sick thicknesser wrap wraps paris trial unite untie batted belle bells bully billy boxed bowel bowled bridges casing cares cures corps coves cones corer copes corns creep creeks creepy crock crocks croak capped cupping depths doers firms fills filmy fencer gouge gouges gouged hallow jolt lathe lathes lashes leans leads leafs lacks leaps leaning leading leaping lacking linking linen looses loves lobes losers pane popular pothole potholes prod prods seas seats sears slams scams shelved selves shelve skids skis spins shins salts splats spats swats sprue spruced stages slaves starves stakes stares saves save stake stare suave stink slick stripy staff stiff stuffy snuff scuff tended teens breeding blending bleeping dishes dashed fading faking fastest fittest sludge stained stains strops strop price prices pie pies niece places stick sticky stuck stack stacks stock stocks stack sticks static statue status rails trail rain brain train raise seams steam dream seals sleds slides slide sling sledding sleigh cords cards carts parts party panty pansy penny bread tyres tyre steve steves stevie`)
