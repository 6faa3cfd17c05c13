package glue

import (
	_ "embed" // the table of classes
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"

	"presshand/engine/unit"
)

//go:embed classes.csv
var classesCSV string

var (
	table  = mustRead(classesCSV)
	byName = index(table)
)

// mustRead reads the embedded table. It is part of the program, so a fault in
// it is a fault of the program.
func mustRead(text string) []Class {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		panic(fmt.Sprintf("glue table: %v", err))
	}
	var all []Class
	for _, row := range rows[1:] {
		c, err := read(row)
		if err != nil {
			panic(fmt.Sprintf("glue table, %s: %v", row[0], err))
		}
		all = append(all, c)
	}
	return all
}

func read(row []string) (Class, error) {
	var v [13]float64
	for i := range v {
		n, err := strconv.ParseFloat(row[3+i], 64)
		if err != nil {
			return Class{}, err
		}
		v[i] = n
	}
	minutes := unit.Minutes
	c := Class{
		Name: row[0], Also: split(row[1]), WaterBased: row[2] == "yes",
		Spread: unit.Around(unit.GramsPerSquareMetre(v[0]), unit.GramsPerSquareMetre(v[1]), unit.GramsPerSquareMetre(v[2])),
		Open:   unit.Around(minutes(v[3]), minutes((v[3]+v[4])/2), minutes(v[4])),
		Closed: unit.Around(minutes(v[5]), minutes(v[6]), minutes(v[7])),
		Press:  unit.Around(minutes(v[8]), minutes(v[9]), minutes(v[10])),
		Lowest: unit.Celsius(v[11]),
		Gap:    unit.Millimetres(v[12]),
	}
	for _, h := range split(row[16]) {
		c.Hazards = append(c.Hazards, Hazard(h))
	}
	for i, s := range []*unit.Standing{
		&c.SpreadStanding, &c.OpenStanding, &c.ClosedStanding,
		&c.PressStanding, &c.LowestStanding, &c.GapStanding,
	} {
		weakest, err := standing(row[17+i])
		if err != nil {
			return Class{}, err
		}
		*s = weakest
	}
	return c, nil
}

// standing reads one letter for each end of a range, S seen in a source, E
// placed by us between ends that were seen, M from memory, and returns the
// weakest.
func standing(letters string) (unit.Standing, error) {
	of := map[rune]unit.Standing{'S': unit.Seen, 'E': unit.Estimate, 'M': unit.FromMemory}
	var weakest unit.Standing
	for _, l := range letters {
		s, ok := of[l]
		if !ok {
			return "", fmt.Errorf("standing is %q, want letters S, E and M", letters)
		}
		weakest = unit.Weakest(weakest, s)
	}
	return weakest, nil
}

func split(names string) []string {
	if names == "" {
		return nil
	}
	return strings.Split(names, ";")
}

func index(all []Class) map[string]int {
	names := map[string]int{}
	for i, c := range all {
		for _, list := range [][]string{{c.Name}, c.Also} {
			for _, name := range list {
				names[plain(name)] = i
			}
		}
	}
	return names
}
