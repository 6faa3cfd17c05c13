package plan_test

import (
	"fmt"
	"math"
	"os"
	"strconv"
	"testing"
	"time"

	"presshand/engine/plan"
	"presshand/engine/unit"
)

// secondsVariable limits the solver on each instance; 60 s unless it is set.
const secondsVariable = "PRESSHAND_MILP_SECONDS"

func solverSeconds(b *testing.B) int {
	s := os.Getenv(secondsVariable)
	if s == "" {
		return 60
	}
	n, err := strconv.Atoi(s)
	if err != nil || n < 1 {
		b.Fatalf("%s is %q, want whole seconds", secondsVariable, s)
	}
	return n
}

// onGrid is the job in 1/320 mm, the coarsest unit that holds 1/64 in and
// 0.1 mm: the solver gets the same instance.
func onGrid(job plan.StripJob) (widths, counts, targets []int) {
	grid := func(l unit.Length) int { return int(math.Round(l.Millimetres() * 320)) }
	for _, p := range job.Stock {
		widths, counts = append(widths, grid(p.Width)), append(counts, p.Count)
	}
	for _, p := range job.Panels {
		for range p.Count {
			targets = append(targets, grid(p.Width)+grid(job.Trim))
		}
	}
	return widths, counts, targets
}

// againstSolver reports a row of the table: our time and how far off the
// bound, the solver's, and how many times faster. The solver's run is not
// in the benchmark's own time.
func againstSolver(b *testing.B, ours func() string, theirs func(path string, seconds int) string) {
	path, found := solver(b)
	if !found {
		b.Fatal("no MILP solver on the PATH: install coinor-cbc")
	}
	start := time.Now()
	b.StopTimer()
	their := theirs(path, solverSeconds(b))
	took := time.Since(start)
	b.StartTimer()
	var our string
	for b.Loop() {
		our = ours()
	}
	each := b.Elapsed() / time.Duration(b.N)
	b.ReportMetric(took.Seconds()/each.Seconds(), "x-faster")
	b.ReportMetric(took.Seconds(), "solver-s")
	b.Logf("%-28s ours %10v %-34s solver %10v %s", b.Name(), each.Round(time.Microsecond), our, took.Round(time.Millisecond), their)
}

func stripsAgainstSolver(b *testing.B, panels int, tight bool) {
	job := benchJob(1, panels, tight)
	widths, counts, targets := onGrid(job)
	var need int
	for _, t := range targets {
		need += t
	}
	againstSolver(b, func() string {
		p, err := plan.Strips(job, nil)
		if err != nil {
			b.Fatal(err)
		}
		c := p.Certificate
		return fmt.Sprintf("%d panels, waste %.4f %%, best %v", c.Panels, 100*c.Waste.Millimetres()*320/float64(need), c.Best)
	}, func(path string, seconds int) string {
		a := stripProgram(widths, counts, targets, 0).solve(b, path, seconds)
		waste, _, ok := a.sums(widths, targets)
		return fmt.Sprintf("found %v, waste %.4f %%, proven %v", ok, 100*float64(waste)/float64(need), a.optimal)
	})
}

// levelProgram packs in levels across the bed, the levels stacked along it:
// the general program of bedProgram finds nothing at all for sixty panels.
// Each panel is there twice, once each way round, highest first. Lodi, Martello
// & Vigo, Models and bounds for two-dimensional level packing problems, 2004 (m).
func levelProgram(job plan.LoadJob) *milp {
	m := &milp{}
	grid := func(l unit.Length) int { return int(math.Round(l.Millimetres())) }
	gap := grid(job.Gap)
	w, h := grid(job.Bed.Width)+gap, grid(job.Bed.Length)+gap
	var copies [][3]int // width, height, panel
	for i, p := range job.Panels {
		a, b := grid(p.Width)+gap, grid(p.Length)+gap
		for _, c := range [][3]int{{a, b, i}, {b, a, i}} {
			if c[0] <= w && c[1] <= h {
				copies = append(copies, c)
			}
		}
	}
	byHeight(copies)
	name := func(s string, a, b int) string { return fmt.Sprintf("%s_%d_%d", s, a, b) }
	once := make([][]string, len(job.Panels))
	for a, c := range copies {
		y, q := m.integer(name("y", a, a), 1), m.integer(name("q", a, a), 1)
		once[c[2]] = append(once[c[2]], term(1, y))
		m.objective = append(m.objective, term(1, q))
		across, along := []string{term(c[0]-w, y)}, []string{term(c[1]-h, q)}
		for b := a + 1; b < len(copies); b++ {
			if copies[b][2] == c[2] {
				continue
			}
			x, z := m.integer(name("x", a, b), 1), m.integer(name("z", a, b), 1)
			once[copies[b][2]] = append(once[copies[b][2]], term(1, x))
			across, along = append(across, term(copies[b][0], x)), append(along, term(copies[b][1], z))
		}
		m.row("<=", 0, across...)
		m.row("<=", 0, along...)
		in := []string{term(1, q), term(-1, y)}
		for b := range a {
			if copies[b][2] != c[2] {
				in = append(in, term(1, name("z", b, a)))
			}
		}
		m.row("=", 0, in...)
	}
	for _, terms := range once {
		m.row("=", 1, terms...)
	}
	return m
}

func byHeight(cs [][3]int) {
	for i := range cs {
		for j := i; j > 0 && cs[j][1] > cs[j-1][1]; j-- {
			cs[j], cs[j-1] = cs[j-1], cs[j]
		}
	}
}

func loadsAgainstSolver(b *testing.B, seed dice) {
	job := mixedLoads(seed)
	againstSolver(b, func() string {
		p, err := plan.Loads(job, nil)
		if err != nil {
			b.Fatal(err)
		}
		c := p.Certificate
		return fmt.Sprintf("%d loads, bound %d, area %d", c.Loads, c.Bound, c.AreaBound)
	}, func(path string, seconds int) string {
		m := levelProgram(job)
		a := m.solve(b, path, seconds)
		loads := 0
		for v, n := range a.values {
			if v[0] == 'q' {
				loads += n
			}
		}
		return fmt.Sprintf("found %v, %d loads in levels, proven %v", a.found, loads, a.optimal)
	})
}

func BenchmarkAgainstMilp_oneLoose(b *testing.B)   { stripsAgainstSolver(b, 1, false) }
func BenchmarkAgainstMilp_oneTight(b *testing.B)   { stripsAgainstSolver(b, 1, true) }
func BenchmarkAgainstMilp_tenLoose(b *testing.B)   { stripsAgainstSolver(b, 10, false) }
func BenchmarkAgainstMilp_tenTight(b *testing.B)   { stripsAgainstSolver(b, 10, true) }
func BenchmarkAgainstMilp_sixtyMixed(b *testing.B) { loadsAgainstSolver(b, 1) }
func BenchmarkAgainstMilp_sixtyLarge(b *testing.B) { loadsAgainstSolver(b, 5) }
