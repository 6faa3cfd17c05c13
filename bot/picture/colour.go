package picture

import "image/color"

// The palette of Okabe & Ito, Color Universal Design (2008), which people with
// any of the common colour blindnesses tell apart.
var (
	green      = rgb(0x009E73)
	blue       = rgb(0x0072B2)
	vermillion = rgb(0xD55E00)
)

// Tints of the palette, and the page.
var (
	paper      = rgb(0xFCFBF8)
	white      = rgb(0xFFFFFF)
	inkColour  = rgb(0x1B2127)
	softInk    = rgb(0x4A545E)
	faint      = rgb(0xC9CED3)
	border     = rgb(0xB4BBC2)
	woodTint   = rgb(0xF3DDB3)
	woodShade  = rgb(0xE9CB94)
	sledTint   = rgb(0xDDE3E8)
	caulTint   = rgb(0xBDC8D2)
	coreTint   = rgb(0xD5C7B5)
	matTint    = rgb(0xA6D6C4)
	fenceTint  = rgb(0xA9D6F2)
	barTint    = rgb(0xF2BF55)
	bandTint   = rgb(0xCBE3F3)
	purpleTint = rgb(0xEBCBDD)
	wedgeTint  = rgb(0xCF93B8)
	grainTint  = rgb(0xD2AC6B)
	none       = color.NRGBA{}
)

// The same red, green, blue and purple, dark enough for small type on the page (contrast
// over 4.5 to 1, WCAG 2).
var (
	redInk    = rgb(0xA84300)
	greenInk  = rgb(0x00694D)
	blueInk   = rgb(0x005A8C)
	purpleInk = rgb(0x8E3A6C)
)

func rgb(v uint32) color.NRGBA {
	return color.NRGBA{uint8(v >> 16), uint8(v >> 8), uint8(v), 0xFF}
}
