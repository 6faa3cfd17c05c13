package grammar_test

import (
	"fmt"
	"math/rand"
	"reflect"
	"strings"
	"testing"

	"presshand/grammar"
)

// A clause is one statement in several wordings. What it states is written
// beside it in the long form.
type clause struct{ says, means string }

// clausesOf draws one statement of each part of a load.
func clausesOf(r *rand.Rand) []clause {
	pick := func(cs ...clause) clause { return cs[r.Intn(len(cs))] }
	n, vacuum := 3+r.Intn(9), 20+r.Intn(7)
	width, thickness := []string{"2 1/4", "2-1/4", "2.25", "2¼"}[r.Intn(4)], []string{"3/4", ".75", "¾", "0.75"}[r.Intn(4)]
	size := func(format string) clause {
		return clause{
			strings.NewReplacer("W", width, "T", thickness, "N", fmt.Sprint(n)).Replace(format),
			fmt.Sprintf("strip count: %d; strip width: 2.25 in; strip thickness: 0.75 in", n),
		}
	}
	gauge := func(format string) clause {
		return clause{fmt.Sprintf(format, vacuum), fmt.Sprintf("vacuum: %d inHg", vacuum)}
	}
	return []clause{
		pick(size("N strips W wide T thick"), size("N strips W x T"), size(`N pcs W" wide and T" thick`), size("N staves W in wide x T in thick"), size("N boards T thick and W wide"), size(`N slats W" x T"`)),
		pick(clause{"1 1/2 bar", "bar height: 1.5 in"}, clause{`1-1/2" side bar`, "bar height: 1.5 in"}, clause{"bar 1.5 tall", "bar height: 1.5 in"}, clause{"bar is 1 1/2 in", "bar height: 1.5 in"}, clause{"inch and a half bar", "bar height: 1.5 in"}),
		pick(gauge("%d inHg"), gauge(`%d"Hg`), gauge("pulling %d"), gauge("gauge says %d"), gauge("%d inches of vacuum"), gauge("vacuum %d inHg"), gauge(`%d" vac`), gauge("at %d inHg")),
		pick(clause{"yellow glue", "glue: aliphatic"}, clause{"pva", "glue: pva"}, clause{"with epoxy", "glue: epoxy"}, clause{"type I", "glue: crosslinked-pva"}, clause{"glue is pur", "glue: polyurethane"}),
		pick(clause{"cherry", "species: cherry"}, clause{"white oak", "species: white oak"}, clause{"in walnut", "species: walnut"}),
		pick(clause{"36 long", "strip length: 36 in"}, clause{"3 ft long", "strip length: 36 in"}, clause{`36" long`, "strip length: 36 in"}),
		pick(clause{"65F in the shop", "shop temp: 65 °F"}, clause{"shop at 65 °F", "shop temp: 65 °F"}, clause{"65 degrees in here", "shop temp: 65 °F"}),
	}
}

// A load may be told in any order, its clauses parted by commas, semicolons or
// lines: what it states is what its clauses state.
func TestParse_clausesInAnyOrder(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	for range 500 {
		cs := clausesOf(r)
		r.Shuffle(len(cs), func(i, j int) { cs[i], cs[j] = cs[j], cs[i] })
		cs = cs[:4+r.Intn(len(cs)-3)]
		var says, means []string
		for _, c := range cs {
			says, means = append(says, c.says), append(means, c.means)
		}
		text := strings.Join(says, []string{", ", "; ", "\n", " - "}[r.Intn(4)])
		m, err := meaningOf(strings.Join(means, "; "))
		if err != nil {
			t.Fatal(err)
		}
		p := grammar.Parse(text, grammar.Habit{})
		got, want := stated(p), stated(m.phrase)
		if lacks, extra := without(want, got), without(got, want); len(lacks)+len(extra) > 0 || len(p.Unused) > 0 {
			t.Errorf("%q\n\tlacks %q, extra %q, unused %q", text, lacks, extra, p.Unused)
		}
	}
}

// stated is what a phrase states, whatever it asks.
func stated(p grammar.Phrase) []string {
	var out []string
	for _, f := range p.Facts {
		out = append(out, facet(f))
	}
	return out
}

// Two goals are of one question however a map orders them.
func TestParse_twoGoals(t *testing.T) {
	const text = "how much vacuum for 30 psi at the far joint. face pressure at 21 inHg, in psi"
	first := grammar.Parse(text, grammar.Habit{})
	if len(first.Asks) != 1 || len(first.Asks[0].Goal) != 2 || first.Asks[0].About != grammar.Side {
		t.Fatalf("%q asks %+v, want one question about the side for two figures", text, first.Asks)
	}
	for range 200 {
		if again := grammar.Parse(text, grammar.Habit{}); !reflect.DeepEqual(again, first) {
			t.Fatalf("%q is read as %+v, and then as %+v", text, first, again)
		}
	}
}
