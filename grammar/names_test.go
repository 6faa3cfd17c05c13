package grammar

import (
	"testing"

	"presshand/engine/glue"
	"presshand/engine/wood"
)

// The grammar's names of woods and glues are those that the engine knows.
func TestVocabulary_namesAreTheEngines(t *testing.T) {
	for _, e := range woods {
		if _, ok := wood.Find(e.id); e.kind == kindWood && e.id != "" && !ok {
			t.Errorf("the wood table lacks %q", e.id)
		}
	}
	for _, e := range glues {
		if _, ok := glue.Find(e.id); !ok {
			t.Errorf("the glue table lacks %q", e.id)
		}
	}
	for name, id := range wood.Names() {
		if m, _ := trade.longest(scan(name), 0); m.kind != kindWood || m.id != id {
			t.Errorf("%q is read as %q, the engine takes it for %q", name, m.id, id)
		}
	}
}
