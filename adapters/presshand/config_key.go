package main

import (
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strings"

	"github.com/BurntSushi/toml"
	"github.com/hbollon/go-edlib"
)

// unknownKey says which key of a file is not known, and which is nearest.
func unknownKey(file string, key toml.Key) error {
	known, below := keys(key[:len(key)-1])
	got := key[len(key)-1]
	what := fmt.Errorf("%s: %s is no key", file, key)
	if near := nearest(got, known); near != "" {
		full := append(append(toml.Key{}, key[:len(key)-1]...), near)
		return hint(what, fmt.Sprintf("did you mean %s?", full))
	}
	if len(known) == 0 {
		return hint(what, "leave it out")
	}
	return hint(what, fmt.Sprintf("the keys %s are %s", below, strings.Join(known, ", ")))
}

// keys returns the keys that a table may have, and where that is in words.
func keys(table toml.Key) (names []string, where string) {
	t := reflect.TypeFor[config]()
	for _, step := range table {
		t = inside(t, step)
	}
	if t == nil || t.Kind() != reflect.Struct {
		return nil, ""
	}
	names = slices.Sorted(maps.Keys(fields(t)))
	if len(table) == 0 {
		return names, "outside the tables"
	}
	return names, "of " + table.String()
}

// inside returns the type of a key's value.
func inside(t reflect.Type, key string) reflect.Type {
	if t == nil {
		return nil
	}
	if t.Kind() == reflect.Map {
		return t.Elem()
	}
	if t.Kind() != reflect.Struct {
		return nil
	}
	f, ok := fields(t)[key]
	if !ok {
		return nil
	}
	if f.Kind() == reflect.Pointer {
		return f.Elem()
	}
	return f
}

// fields returns the types of a table's keys.
func fields(t reflect.Type) map[string]reflect.Type {
	out := map[string]reflect.Type{}
	for i := range t.NumField() {
		f := t.Field(i)
		if f.Anonymous {
			maps.Copy(out, fields(f.Type))
			continue
		}
		out[f.Tag.Get("toml")] = f.Type
	}
	return out
}

// nearest returns the name that a word was probably meant for, or "".
func nearest(word string, names []string) string {
	best, least := "", 4
	for _, n := range names {
		d := edlib.OSADamerauLevenshteinDistance(strings.ToLower(word), n)
		if d < least && d < len(n) {
			best, least = n, d
		}
	}
	return best
}
