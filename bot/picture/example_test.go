package picture_test

import (
	"fmt"

	"presshand/bot/picture"
	"presshand/engine/unit"
)

// The bar stands an inch high on the sled beside quarter-inch strips; the
// film comes down behind it, so that only a quarter of it counts.
func ExampleCrossSection_bar() {
	d, err := picture.CrossSection{
		Layers: []picture.Layer{{Part: picture.Sled, Thickness: unit.Millimetres(18)}, {Part: picture.Strips, Thickness: unit.Millimetres(6)}},
		Widths: []unit.Length{unit.Millimetres(60), unit.Millimetres(60)},
		Bar:    &picture.Bar{Height: unit.Millimetres(24), Width: unit.Millimetres(20), Covered: unit.Exactly(unit.Millimetres(6))},
	}.Draw()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(d.Alt)
	// Output:
	// Cross-section of the load, heights to scale. From the bed up: sled 18 mm, strips 6 mm. 2 strips of 60 mm = 120 mm. A side bar 24 mm high and 20 mm wide, standing on the sled. A fence on the far side. Film, pressed on all that it reaches. Hatched: 18 mm of the bar does nothing, with film on both its faces; 6 mm pushes. Stack 42 mm high, to the top of the bar. * Assumed: a fence on the far side, how high is not said.
}
