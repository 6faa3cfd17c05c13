package bot

import "presshand/engine/unit"

// withWishes returns what was said with the wishes gathered in one object.
func withWishes(fs unit.Facts) unit.Facts {
	wishes := unit.Facts{}
	for _, f := range unit.Wished {
		if v, ok := fs[f]; ok {
			wishes[f] = v
			delete(fs, f)
		}
	}
	if len(wishes) > 0 {
		fs[unit.Wishes] = wishes
	}
	return fs
}
