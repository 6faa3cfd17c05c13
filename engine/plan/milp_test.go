package plan_test

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"presshand/engine/plan"
)

// The general MILP solver that plans are compared with is cbc, found on the
// PATH or named by PRESSHAND_MILP; once named it must be there. Where there is
// none, the same tests compare with brute force on smaller instances.
const solverVariable = "PRESSHAND_MILP"

func solver(t testing.TB) (path string, found bool) {
	t.Helper()
	name := os.Getenv(solverVariable)
	named := name != ""
	if !named {
		name = "cbc"
	}
	path, err := exec.LookPath(name)
	if err != nil && named {
		t.Fatalf("%s is %q, and there is no such solver: install coinor-cbc", solverVariable, name)
	}
	return path, err == nil
}

// A milp is a program in the LP format.
type milp struct {
	objective []string // terms to minimise
	rows      []string
	integers  []string // with their upper bounds
	reals     []string
}

func (m *milp) row(op string, right int, terms ...string) {
	m.rows = append(m.rows, fmt.Sprintf(" r%d: %s %s %d", len(m.rows), strings.Join(terms, " "), op, right))
}

func (m *milp) integer(name string, most int) string {
	m.integers = append(m.integers, fmt.Sprintf(" 0 <= %s <= %d", name, most))
	return name
}

func (m *milp) real(name string, most int) string {
	m.reals = append(m.reals, fmt.Sprintf(" 0 <= %s <= %d", name, most))
	return name
}

func term(k int, name string) string { return fmt.Sprintf("%+d %s", k, name) }

func (m *milp) text() string {
	var b strings.Builder
	fmt.Fprintf(&b, "Minimize\n obj: %s\nSubject To\n%s\nBounds\n", strings.Join(m.objective, " "), strings.Join(m.rows, "\n"))
	b.WriteString(strings.Join(append(m.integers, m.reals...), "\n"))
	b.WriteString("\nGenerals\n")
	for _, v := range m.integers {
		fmt.Fprintf(&b, " %s\n", strings.Fields(v)[2])
	}
	b.WriteString("End\n")
	return b.String()
}

// A milpAnswer is what the solver found; optimal says that it proved it.
type milpAnswer struct {
	found, optimal bool
	values         map[string]int
}

// solve runs the solver for at most so many seconds.
func (m *milp) solve(t testing.TB, path string, seconds int) milpAnswer {
	t.Helper()
	dir := t.TempDir()
	in, out := filepath.Join(dir, "in.lp"), filepath.Join(dir, "out.txt")
	if err := os.WriteFile(in, []byte(m.text()), 0o600); err != nil {
		t.Fatal(err)
	}
	said, err := exec.Command(path, in, "sec", strconv.Itoa(seconds), "ratio", "0", "allow", "0", "solve", "solu", out).CombinedOutput()
	if err != nil {
		t.Fatalf("%s: %v\n%s", path, err, said)
	}
	text, err := os.ReadFile(out)
	if err != nil {
		t.Fatalf("%s wrote no solution: %v\n%s", path, err, said)
	}
	lines := strings.Split(strings.TrimSpace(string(text)), "\n")
	a := milpAnswer{values: map[string]int{}, optimal: strings.HasPrefix(lines[0], "Optimal")}
	a.found = a.optimal || strings.HasPrefix(lines[0], "Stopped") && !strings.Contains(lines[0], "no integer")
	for _, l := range lines[1:] {
		f := strings.Fields(strings.TrimPrefix(strings.TrimSpace(l), "**"))
		if len(f) < 3 {
			continue
		}
		v, err := strconv.ParseFloat(f[2], 64)
		if err != nil {
			t.Fatalf("%s: cannot read %q", path, l)
		}
		if v < 0 {
			v = 0
		}
		a.values[f[1]] = int(v + 0.5)
	}
	return a
}

// stripProgram fills every target, in whole units: x_p_i strips of pile i go
// into panel p; what they run over is the objective, or their number where a
// sum is set.
func stripProgram(widths, counts, targets []int, sum int) *milp {
	m := &milp{}
	for i := range widths {
		var used []string
		for p := range targets {
			used = append(used, term(1, m.integer(fmt.Sprintf("x_%d_%d", p, i), counts[i])))
		}
		m.row("<=", counts[i], used...)
	}
	var all []string
	for p, target := range targets {
		var terms []string
		for i, w := range widths {
			terms = append(terms, term(w, fmt.Sprintf("x_%d_%d", p, i)))
			if sum > 0 {
				m.objective = append(m.objective, term(1, fmt.Sprintf("x_%d_%d", p, i)))
			}
		}
		m.row(">=", target, terms...)
		all = append(all, terms...)
	}
	if sum > 0 {
		m.row("<=", sum, all...)
	} else {
		m.objective = all
	}
	return m
}

// sums adds up a strip program's answer in whole numbers.
func (a milpAnswer) sums(widths, targets []int) (waste, strips int, ok bool) {
	ok = a.found
	for p, target := range targets {
		sum := 0
		for i, w := range widths {
			n := a.values[fmt.Sprintf("x_%d_%d", p, i)]
			sum += n * w
			strips += n
		}
		waste += sum - target
		ok = ok && sum >= target
	}
	return waste, strips, ok
}

func pilesJob(widths, counts, targets []int) plan.StripJob {
	var job plan.StripJob
	for i, w := range widths {
		job.Stock = append(job.Stock, plan.Pile{Width: tenths(w), Count: counts[i]})
	}
	for _, t := range targets {
		job.Panels = append(job.Panels, plan.Panel{Width: tenths(t), Count: 1})
	}
	return job
}

// Few widths far apart, so that there is waste to minimise.
func TestStrips_againstMilp(t *testing.T) {
	path, found := solver(t)
	d := dice(17)
	for n := range 24 {
		if !found {
			checkAgainstBrute(t, small(&d, d.from(2, 8), d.from(1, 2)), false)
			continue
		}
		var widths, counts, targets []int
		total := 0
		for range d.from(2, 4) {
			widths, counts = append(widths, 400+13*d.roll(60)), append(counts, d.from(3, 9))
			total += widths[len(widths)-1] * counts[len(counts)-1]
		}
		for range n%3 + 1 {
			targets = append(targets, d.from(total/8, total/4))
		}
		p, err := plan.Strips(pilesJob(widths, counts, targets), nil)
		if err != nil {
			t.Fatal(err)
		}
		c := p.Certificate
		if c.Panels != len(targets) || !c.Best || !c.Fewest {
			t.Fatalf("%v %v %v: not proven best: %+v", widths, counts, targets, c)
		}
		least := stripProgram(widths, counts, targets, 0).solve(t, path, 60)
		waste, _, ok := least.sums(widths, targets)
		got := int(inTenths(c.Waste) + 0.5)
		if !ok || !least.optimal || got != waste {
			t.Fatalf("%v %v %v: waste %d, the solver has %d (%v)", widths, counts, targets, got, waste, least.optimal)
		}
		need := waste
		for _, target := range targets {
			need += target
		}
		few := stripProgram(widths, counts, targets, need).solve(t, path, 60)
		if _, strips, ok := few.sums(widths, targets); !ok || !few.optimal || strips != c.Strips {
			t.Fatalf("%v %v %v: %d strips, the solver has %d (%v)", widths, counts, targets, c.Strips, strips, few.optimal)
		}
	}
}

// bedProgram lays panels anywhere on beds: z_i_b puts panel i on bed b, o_i
// turns it, l_i_j has i left of j and d_i_j below it.
func bedProgram(c cells, beds int) *milp {
	m := &milp{}
	n := len(c.panels)
	v := func(s string, ij ...int) string {
		for _, i := range ij {
			s += "_" + strconv.Itoa(i)
		}
		return s
	}
	for b := range beds {
		m.objective = append(m.objective, term(1, m.integer(v("u", b), 1)))
	}
	for i, p := range c.panels {
		x, y, o := m.real(v("x", i), c.w), m.real(v("y", i), c.h), m.integer(v("o", i), 1)
		m.row("<=", c.w-p[0], term(1, x), term(p[1]-p[0], o))
		m.row("<=", c.h-p[1], term(1, y), term(p[0]-p[1], o))
		var on []string
		for b := range beds {
			on = append(on, term(1, m.integer(v("z", i, b), 1)))
			m.row("<=", 0, term(1, v("z", i, b)), term(-1, v("u", b)))
		}
		m.row("=", 1, on...)
	}
	for i := range n {
		for j := range n {
			if i == j {
				continue
			}
			p := c.panels[i]
			l, d := m.integer(v("l", i, j), 1), m.integer(v("d", i, j), 1)
			m.row("<=", c.w-p[0], term(1, v("x", i)), term(-1, v("x", j)), term(p[1]-p[0], v("o", i)), term(c.w, l))
			m.row("<=", c.h-p[1], term(1, v("y", i)), term(-1, v("y", j)), term(p[0]-p[1], v("o", i)), term(c.h, d))
		}
		for j := range i {
			for b := range beds {
				m.row(">=", -1, term(1, v("l", i, j)), term(1, v("l", j, i)), term(1, v("d", i, j)), term(1, v("d", j, i)),
					term(-1, v("z", i, b)), term(-1, v("z", j, b)))
			}
		}
	}
	return m
}

func TestLoads_againstMilp(t *testing.T) {
	path, found := solver(t)
	d := dice(23)
	for range 12 {
		c := cells{w: 5, h: 8}
		for range d.from(3, 5) {
			c.panels = append(c.panels, [2]int{d.from(2, 4), d.from(2, 6)})
		}
		p, err := plan.Loads(cellJob(c, 1, 0), nil)
		if err != nil {
			t.Fatal(err)
		}
		want := 0
		if found {
			a := bedProgram(c, 3).solve(t, path, 60)
			for b := range 3 {
				want += a.values["u_"+strconv.Itoa(b)]
			}
			if !a.optimal { // more than three beds are needed, or more than a minute
				want = c.fewestLoads(1, len(c.panels))
			}
		} else {
			want = c.fewestLoads(1, len(c.panels))
		}
		if p.Certificate.Loads != want {
			t.Fatalf("%+v: %d loads, want %d", c, p.Certificate.Loads, want)
		}
	}
}
