package picture

import (
	"strings"
	"sync"
	"unicode"

	"github.com/go-fonts/liberation/liberationsansbold"
	"github.com/go-fonts/liberation/liberationsansregular"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// The embedded typeface has the widths of the others in the stack, so that a
// label measured here fits wherever the SVG is shown.
const fontStack = "Liberation Sans, Arial, Helvetica, sans-serif"

// Above and below the baseline, as parts of the type size: the face's highest
// capital with an accent, and its deepest descender.
const (
	ascent  = 0.80
	descent = 0.22
)

var typefaces = sync.OnceValue(func() [2]*sfnt.Font {
	var fs [2]*sfnt.Font
	for i, ttf := range [][]byte{liberationsansregular.TTF, liberationsansbold.TTF} {
		f, err := sfnt.Parse(ttf)
		if err != nil {
			panic("embedded typeface: " + err.Error())
		}
		fs[i] = f
	}
	return fs
})

func typeface(bold bool) *sfnt.Font {
	if bold {
		return typefaces()[1]
	}
	return typefaces()[0]
}

// advances holds how far each glyph of the basic alphabet moves the pen.
var advances = sync.OnceValue(func() *[2][0x100]float64 {
	t := new([2][0x100]float64)
	var buf sfnt.Buffer
	for i, f := range typefaces() {
		for r := range rune(0x100) {
			t[i][r] = advance(f, &buf, r)
		}
	}
	return t
})

// advance returns the width of r in ems.
func advance(f *sfnt.Font, buf *sfnt.Buffer, r rune) float64 {
	g, err := f.GlyphIndex(buf, r)
	if err != nil {
		return 0
	}
	em := f.UnitsPerEm()
	a, err := f.GlyphAdvance(buf, g, fixed.I(int(em)), font.HintingNone)
	if err != nil {
		return 0
	}
	return float64(a) / 64 / float64(em)
}

// textWidth returns how wide s is set, without kerning.
func textWidth(s string, size float64, bold bool) float64 {
	f, table := typeface(bold), &advances()[0]
	if bold {
		table = &advances()[1]
	}
	var buf sfnt.Buffer
	w := 0.0
	for _, r := range s {
		if r < 0x100 {
			w += table[r]
		} else {
			w += advance(f, &buf, r)
		}
	}
	return w * size
}

// fit shortens s to a width, with an ellipsis.
func fit(s string, size float64, bold bool, width float64) string {
	s = clean(s)
	if textWidth(s, size, bold) <= width {
		return s
	}
	rs := []rune(s)
	for n := len(rs) - 1; n > 0; n-- {
		short := strings.TrimRight(string(rs[:n]), " ,;") + "…"
		if textWidth(short, size, bold) <= width {
			return short
		}
	}
	return ""
}

// wrap breaks s into lines no wider than width.
func wrap(s string, size, width float64) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(clean(s)) {
		word = fit(word, size, false, width)
		switch {
		case line == "":
			line = word
		case textWidth(line+" "+word, size, false) <= width:
			line += " " + word
		default:
			lines = append(lines, line)
			line = word
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// clean keeps what can be drawn on one line, and swaps a letter that the
// typeface lacks for a plain mark. Marks that turn the direction of writing go.
func clean(s string) string {
	f := typeface(false)
	var buf sfnt.Buffer
	return strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return ' '
		case unicode.Is(unicode.C, r), unicode.Is(unicode.M, r):
			return -1
		case r > 0x7E:
			if g, err := f.GlyphIndex(&buf, r); err != nil || g == 0 {
				return '▯'
			}
		}
		return r
	}, strings.ToValidUTF8(s, ""))
}
