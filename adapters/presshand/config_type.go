package main

import (
	_ "embed" // for the sample
	"encoding"
	"fmt"
	"reflect"
	"regexp"
	"strconv"
	"strings"

	"github.com/BurntSushi/toml"
)

// sample shows every key, and so has an example of each.
//
//go:embed presshand.toml
var sample string

// wrongType finds the line and the key in the error about a value of a type
// that its key does not have, which has no fields for them.
var wrongType = regexp.MustCompile(`^toml: (?:line (\d+) )?\(last key ("(?:[^"\\]|\\.)*")\): `)

// wrongValue says which value of a file is of a wrong type, and what is wanted.
func wrongValue(file string, meta toml.MetaData, err error) error {
	found := wrongType.FindStringSubmatch(err.Error())
	if found == nil {
		return hint(fmt.Errorf("%s: %w", file, err), "mend it; presshand.toml beside the sources shows every key")
	}
	name, _ := strconv.Unquote(found[2])
	key := keyOf(meta, name)
	where := file
	if found[1] != "" {
		where += " line " + found[1]
	}
	return mistyped(where, meta, key)
}

func mistyped(where string, meta toml.MetaData, key toml.Key) error {
	wanted := wantedOf(key)
	got := gotten(meta.Type(key...), wanted.list)
	return hint(fmt.Errorf("%s: %s is %s, want %s", where, key, got, wanted.words), "write it like "+example(key, wanted))
}

// noTable refuses a value where a table of free names is wanted, which the
// library passes over.
func noTable(file string, meta toml.MetaData) error {
	for name, t := range fields(reflect.TypeFor[config]()) {
		if is := meta.Type(name); t.Kind() == reflect.Map && is != "" && is != "Hash" {
			return mistyped(file, meta, toml.Key{name})
		}
	}
	return nil
}

// keyOf returns the key that is printed as name.
func keyOf(meta toml.MetaData, name string) toml.Key {
	for _, k := range meta.Keys() {
		if k.String() == name {
			return k
		}
	}
	return toml.Key{name}
}

// gotten says what a value is. One that is a list though a list is wanted has
// something else in it.
func gotten(tomlType string, wantsList bool) string {
	switch tomlType {
	case "Integer", "Float":
		return "a number"
	case "Bool":
		return "true or false"
	case "String":
		return "a text"
	case "Hash":
		return "a table"
	case "Array", "ArrayHash":
		if wantsList {
			return "a list with something other than texts in it"
		}
		return "a list"
	}
	return "something else"
}

// A wanting is what a key's value must be.
type wanting struct {
	words       string
	value       string // how such a value is written
	list, table bool
}

func wantedOf(key toml.Key) wanting {
	t := reflect.TypeFor[config]()
	for _, step := range key {
		t = inside(t, step)
	}
	switch {
	case t == nil:
		return wanting{words: "another value", value: `"…"`}
	case reflect.PointerTo(t).Implements(reflect.TypeFor[encoding.TextUnmarshaler]()):
		return wanting{words: "a time in quotes", value: `"90d"`}
	}
	switch t.Kind() {
	case reflect.Slice:
		return wanting{words: "a list of texts", value: `["…", "…"]`, list: true}
	case reflect.Bool:
		return wanting{words: "true or false, without quotes", value: "true"}
	case reflect.Int:
		return wanting{words: "a number, without quotes", value: "20"}
	case reflect.Struct, reflect.Map:
		return wanting{words: "a table", table: true}
	}
	return wanting{words: "a text in quotes", value: `"…"`}
}

// example shows how a key is written, as in the sample where that has a value.
func example(key toml.Key, wanted wanting) string {
	if wanted.table {
		return "[" + key.String() + "], with its keys on the lines below"
	}
	name := key[len(key)-1]
	table := ""
	for line := range strings.Lines(sample) {
		if head, ok := strings.CutPrefix(line, "["); ok {
			table = strings.TrimRight(strings.TrimSpace(head), "]")
			continue
		}
		got, value, ok := strings.Cut(strings.TrimPrefix(line, "# "), " = ")
		if !ok || got != name || table != key[:len(key)-1].String() {
			continue
		}
		value, _, _ = strings.Cut(value, "  #")
		if value = strings.TrimSpace(value); value != "[]" && value != `""` {
			return name + " = " + value
		}
	}
	return name + " = " + wanted.value
}
