package picture

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"hash/crc32"
	"image"
	"image/color"
	"io"
)

// The filters of a row, as the PNG specification numbers them.
const (
	asItIs = 0
	asUp   = 2 // the difference from the row above
)

// encode writes a bitmap as PNG. A row that repeats the one above it is written
// as its difference from that, which is nothing: image/png writes all rows of a
// palette as they are, and most rows of a drawing repeat.
func encode(img *image.Paletted) ([]byte, error) {
	var w bytes.Buffer
	w.WriteString("\x89PNG\r\n\x1a\n")
	b := img.Bounds()
	head := binary.BigEndian.AppendUint32(nil, uint32(b.Dx()))
	head = binary.BigEndian.AppendUint32(head, uint32(b.Dy()))
	writeChunk(&w, "IHDR", append(head, 8, 3, 0, 0, 0)) // eight bits of a palette
	var colours, alphas []byte
	for i, c := range img.Palette {
		c := color.NRGBAModel.Convert(c).(color.NRGBA)
		colours = append(colours, c.R, c.G, c.B)
		if c.A < 0xFF {
			alphas = append(append(alphas, bytes.Repeat([]byte{0xFF}, i-len(alphas))...), c.A)
		}
	}
	writeChunk(&w, "PLTE", colours)
	if alphas != nil {
		writeChunk(&w, "tRNS", alphas)
	}
	data, err := packed(img)
	if err != nil {
		return nil, err
	}
	writeChunk(&w, "IDAT", data)
	writeChunk(&w, "IEND", nil)
	return w.Bytes(), nil
}

// packed returns the rows of a bitmap, compressed.
func packed(img *image.Paletted) ([]byte, error) {
	var out bytes.Buffer
	z := zlib.NewWriter(&out)
	b := img.Bounds()
	same, line := make([]byte, 1+b.Dx()), make([]byte, 1+b.Dx())
	same[0], line[0] = asUp, asItIs
	for y := range b.Dy() {
		next := line
		now := img.Pix[y*img.Stride:][:b.Dx()]
		if y > 0 && bytes.Equal(now, line[1:]) {
			next = same
		}
		copy(line[1:], now)
		if _, err := z.Write(next); err != nil {
			return nil, err
		}
	}
	if err := z.Close(); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

func writeChunk(w io.Writer, kind string, data []byte) {
	b := binary.BigEndian.AppendUint32(nil, uint32(len(data)))
	b = append(append(b, kind...), data...)
	b = binary.BigEndian.AppendUint32(b, crc32.ChecksumIEEE(b[4:]))
	w.Write(b) // a bytes.Buffer takes every write
}
