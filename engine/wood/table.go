package wood

import (
	_ "embed" // the table of species
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"

	"presshand/engine/unit"
)

//go:embed species.csv
var speciesCSV string

var (
	table  = mustRead(speciesCSV)
	byName = index(table)
	loose  = looseNames(table)

	meanRadial, meanTangential = meanMovement(table, Hardwood)
)

// mustRead reads the embedded table. It is part of the program, so a fault in
// it is a fault of the program.
func mustRead(text string) []Species {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		panic(fmt.Sprintf("species table: %v", err))
	}
	var all []Species
	for _, row := range rows[1:] {
		s, err := read(row)
		if err != nil {
			panic(fmt.Sprintf("species table, %s: %v", row[0], err))
		}
		all = append(all, s)
	}
	return all
}

func read(row []string) (Species, error) {
	var figures [7]float64
	for i := range figures {
		text := row[4+i]
		if text == "" && i == 6 { // no crushing strength in Table 5-5b
			continue
		}
		v, err := strconv.ParseFloat(text, 64)
		if err != nil {
			return Species{}, err
		}
		figures[i] = v
	}
	s := Species{
		Name: row[0], Also: split(row[1]), Loosely: split(row[2]), Group: Group(row[3]),
		SpecificGravity: figures[0],
		Along:           unit.Gigapascals(figures[1]),
		RatioTangential: figures[2], RatioRadial: figures[3],
		Radial: Movement(figures[4]), Tangential: Movement(figures[5]),
		Crush:            unit.Kilopascals(figures[6] * 1000),
		StrengthStanding: unit.Standing(row[11]),
		RatioStanding:    unit.Standing(row[12]),
		MovementStanding: unit.Standing(row[13]),
	}
	if row[12] == "group mean" {
		s.GroupRatios, s.RatioStanding = true, unit.Computed
		if s.Group == Softwood { // three of the seven rows behind that mean are recalled
			s.RatioStanding = unit.FromMemory
		}
	}
	return s, nil
}

func split(names string) []string {
	if names == "" {
		return nil
	}
	return strings.Split(names, ";")
}

func index(all []Species) map[string]int {
	names := map[string]int{}
	for i, s := range all {
		for _, list := range [][]string{{s.Name}, s.Also, s.Loosely} {
			for _, name := range list {
				names[plain(name)] = i
			}
		}
	}
	return names
}

func looseNames(all []Species) map[string]bool {
	names := map[string]bool{}
	for _, s := range all {
		for _, name := range s.Loosely {
			names[plain(name)] = true
		}
	}
	return names
}

func meanMovement(all []Species, g Group) (radial, tangential Movement) {
	var n Movement
	for _, s := range all {
		if s.Group == g {
			radial, tangential, n = radial+s.Radial, tangential+s.Tangential, n+1
		}
	}
	return radial / n, tangential / n
}
