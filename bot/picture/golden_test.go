package picture

import (
	"bytes"
	"encoding/xml"
	"errors"
	"flag"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the golden drawings anew, to be looked at")

const goldenFolder = "../../testdata/picture"

// The golden drawings were looked at, at the width of a phone, before they
// were kept; a change to one is to be looked at again.
func TestDrawing_golden(t *testing.T) {
	seen := map[string]bool{}
	for name, of := range samples() {
		d, err := of.Draw()
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		file := filepath.Join(goldenFolder, name+".svg")
		seen[file] = true
		if *update {
			if err := os.WriteFile(file, d.SVG(), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if got := d.SVG(); !bytes.Equal(got, want) {
			t.Errorf("%s: drawing differs from %s; look at it, then run with -update", name, file)
		}
	}
	files, err := filepath.Glob(filepath.Join(goldenFolder, "*.svg"))
	if err != nil || len(files) != len(seen) {
		t.Errorf("%d golden drawings (%v), want the %d of the samples and no other", len(files), err, len(seen))
	}
}

// An element of an SVG as it was read back.
type element struct {
	name string
	attr map[string]string
	text string
}

// readSVG parses a document strictly and returns its elements.
func readSVG(t *testing.T, svg []byte) []element {
	t.Helper()
	dec := xml.NewDecoder(bytes.NewReader(svg))
	var all []element
	for {
		tok, err := dec.Token()
		if errors.Is(err, io.EOF) {
			return all
		}
		if err != nil {
			t.Fatalf("svg is not well formed: %v", err)
		}
		switch tok := tok.(type) {
		case xml.StartElement:
			e := element{name: tok.Name.Local, attr: map[string]string{}}
			for _, a := range tok.Attr {
				e.attr[a.Name.Local] = a.Value
			}
			all = append(all, e)
		case xml.CharData:
			if len(all) > 0 {
				all[len(all)-1].text += string(tok)
			}
		}
	}
}

func TestSVG_saysItInWords(t *testing.T) {
	for name, of := range samples() {
		d, err := of.Draw()
		if err != nil {
			t.Fatal(err)
		}
		text := map[string]string{}
		for _, e := range readSVG(t, d.SVG()) {
			text[e.name] += strings.TrimSuffix(e.text, "\n")
		}
		if text["title"] != d.Title || text["desc"] != d.Alt || len(d.Alt) < 40 {
			t.Errorf("%s: title %q and desc %q, want the title and the alt text", name, text["title"], text["desc"])
		}
	}
}

func TestSVG_typedTextStaysText(t *testing.T) {
	evil := "</text><script>alert(1)</script> & \"x\" \x00\u202e木"
	d, err := StripLayout{Title: evil, Note: evil, Panels: []StripPanel{{Name: evil, Widths: equal(2, in(2))}}}.Draw()
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range readSVG(t, d.SVG()) {
		switch e.name {
		case "svg", "title", "desc", "polygon", "polyline", "text":
		default:
			t.Errorf("svg holds an element %q, want shapes and text only", e.name)
		}
		if strings.ContainsRune(e.text, '\u202e') {
			t.Errorf("text %q turns the direction of writing", e.text)
		}
	}
}
