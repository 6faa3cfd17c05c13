package plan_test

import (
	"testing"

	"presshand/engine/plan"
	"presshand/engine/unit"
)

// randomWidths returns stock of 40 to 120 mm, half of it measured in 1/64 in
// and half in 0.1 mm, so that the common grid is 1/320 mm.
func randomWidths(d *dice, pieces int) (stock []plan.Pile, total unit.Length) {
	for i := range pieces {
		w := tenths(d.from(400, 1200))
		if i%2 == 0 {
			w = unit.Inches(float64(d.from(101, 302)) / 64)
		}
		stock = append(stock, plan.Pile{Width: w, Count: 1})
		total += w
	}
	return stock, total
}

// benchJob is so many panels from 300 strips of random width: loose stock has
// two and a half times what they need, tight stock all but 3 per cent.
func benchJob(seed dice, panels int, tight bool) plan.StripJob {
	stock, total := randomWidths(&seed, 300)
	job := plan.StripJob{Stock: stock, Trim: plan.DefaultTrim}
	share := 0.4
	if tight {
		share = 0.97
	}
	if panels == 1 && !tight {
		job.Panels = []plan.Panel{{Width: unit.Millimetres(3000), Count: 1}}
		return job
	}
	each := total*unit.Length(share)/unit.Length(panels) - job.Trim
	for i := range panels {
		w := each * unit.Length(0.8+0.4*(float64(i)+0.5)/float64(panels)) // 0.8 to 1.2 of it
		job.Panels = append(job.Panels, plan.Panel{Width: tenths(int(inTenths(w))), Count: 1})
	}
	if panels == 1 { // one panel of 3 m at most: the stock is cut down to it
		job.Panels[0].Width = unit.Millimetres(3000)
		need, sum := job.Panels[0].Width+job.Trim, unit.Length(0)
		for i, p := range stock {
			if sum += p.Width; sum*0.97 >= need {
				job.Stock = stock[:i+1]
				break
			}
		}
	}
	return job
}

func benchStrips(b *testing.B, panels int, tight bool) {
	jobs := make([]plan.StripJob, 8)
	for i := range jobs {
		jobs[i] = benchJob(dice(i+1), panels, tight)
	}
	var waste, bound, need float64
	n := 0
	for b.Loop() {
		job := jobs[n%len(jobs)]
		n++
		p, err := plan.Strips(job, nil)
		if err != nil {
			b.Fatal(err)
		}
		if p.Certificate.Panels != panels {
			b.Fatalf("%d of %d panels made", p.Certificate.Panels, panels)
		}
		for _, pick := range p.Picks {
			need += (pick.Sum - pick.Over).Millimetres()
		}
		waste += p.Certificate.Waste.Millimetres()
		bound += p.Certificate.WasteBound.Millimetres()
	}
	b.ReportMetric(100*(waste-bound)/need, "%off")
}

func BenchmarkStrips_oneLoose(b *testing.B) { benchStrips(b, 1, false) }
func BenchmarkStrips_oneTight(b *testing.B) { benchStrips(b, 1, true) }
func BenchmarkStrips_tenLoose(b *testing.B) { benchStrips(b, 10, false) }
func BenchmarkStrips_tenTight(b *testing.B) { benchStrips(b, 10, true) }
