package grammar
import ("testing";"fmt";"os";"strings")
func TestPP(t *testing.T){ for _, m := range strings.Split(os.Getenv("MSG"),"|") { r:=&reader{text:m}; _ = r; p:=Parse(m, Habit{}); fmt.Printf("%q\n asks %+v\n facts %v\n", m, p.Asks, p.Facts); for _, tk := range tokenize(m) { fmt.Printf("[%v %s %s/%s]", tk.symbol, tk.norm, fmt.Sprint(tk.meaning.kind), tk.meaning.id)}; fmt.Println() } }
