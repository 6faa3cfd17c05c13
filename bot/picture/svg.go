package picture

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"image/color"
	"strconv"
)

// SVG returns the drawing as a self-contained SVG document. Its text stays
// text; title and desc carry the title and the alt text.
func (d *Drawing) SVG() []byte {
	var w bytes.Buffer
	fmt.Fprintf(&w, `<svg xmlns="http://www.w3.org/2000/svg" width="%d" height="%s" viewBox="0 0 %d %s" role="img" aria-labelledby="title desc" font-family="%s">`,
		Width, num(d.height), Width, num(d.height), fontStack)
	fmt.Fprintf(&w, "\n<title id=\"title\">%s</title>\n<desc id=\"desc\">%s</desc>\n", escape(clean(d.Title)), escape(clean(d.Alt)))
	for _, s := range d.shapes {
		writeShape(&w, s)
	}
	for _, l := range d.labels {
		writeLabel(&w, l)
	}
	w.WriteString("</svg>\n")
	return w.Bytes()
}

func writeShape(w *bytes.Buffer, s shape) {
	name := "polyline"
	if s.closed {
		name = "polygon"
	}
	fmt.Fprintf(w, "<%s points=\"", name)
	for i, p := range s.points {
		if i > 0 {
			w.WriteByte(' ')
		}
		w.WriteString(num(p.x) + "," + num(p.y))
	}
	fmt.Fprintf(w, `" fill="%s"`, hex(s.fill))
	if s.stroke.A > 0 {
		fmt.Fprintf(w, ` stroke="%s" stroke-width="%s" stroke-linejoin="round"`, hex(s.stroke), num(s.width))
		for i, v := range s.dash {
			w.WriteString([]string{` stroke-dasharray="`, " "}[min(i, 1)] + num(v))
		}
		if s.dash != nil {
			w.WriteByte('"')
		}
	}
	writeFacts(w, s.shows, s.facts)
	w.WriteString("/>\n")
}

func writeLabel(w *bytes.Buffer, l label) {
	b := l.box()
	fmt.Fprintf(w, `<text x="%s" y="%s" font-size="%s" fill="%s" font-kerning="none" textLength="%s"`,
		num(b.x0), num(l.at.y), num(l.size), hex(l.colour), num(b.width()))
	if l.bold {
		w.WriteString(` font-weight="bold"`)
	}
	writeFacts(w, l.shows, l.facts)
	fmt.Fprintf(w, ">%s</text>\n", escape(l.text))
}

func writeFacts(w *bytes.Buffer, shows string, facts []fact) {
	if shows != "" {
		fmt.Fprintf(w, ` data-shows="%s"`, escape(shows))
	}
	for _, f := range facts {
		fmt.Fprintf(w, ` data-%s="%s"`, f.key, escape(clean(f.value)))
	}
}

func escape(s string) string {
	var b bytes.Buffer
	xml.EscapeText(&b, []byte(s)) // a bytes.Buffer takes every write
	return b.String()
}

func hex(c color.NRGBA) string {
	if c.A == 0 {
		return "none"
	}
	return fmt.Sprintf("#%02X%02X%02X", c.R, c.G, c.B)
}

// num writes a coordinate to a hundredth of a point.
func num(v float64) string {
	s := strconv.FormatFloat(v, 'f', 2, 64)
	for s[len(s)-1] == '0' {
		s = s[:len(s)-1]
	}
	if s[len(s)-1] == '.' {
		s = s[:len(s)-1]
	}
	if s == "-0" {
		return "0"
	}
	return s
}
