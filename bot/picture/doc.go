// Package picture draws a press load: its cross-section, the side pressure
// along it, the strips as they will lie, the bed of each load and the day's
// clock. Each is described by a plain value ([CrossSection], [PressureChart],
// [StripLayout], [BedPlan], [DayClock]); its Draw method lays it out as a
// [Drawing], which is written as SVG or as PNG from the same shapes. One drawing
// goes under another with [Drawing.Below].
//
// A drawing is as wide as a phone's screen, 390 points, and as high as it
// needs. It brings its own light ground, so that it reads the same in a dark
// room, and says everything a second time in its alt text.
//
// Rules of the page: colours from the Okabe-Ito palette, never a colour alone
// (a pattern, a mark or a word goes with it); no label touches another or the
// edge; a part drawn to scale carries its measure in data attributes.
package picture
