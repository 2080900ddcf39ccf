package sticks_test
import ("testing";"time";"fmt")
func TestStat(t *testing.T){
 for seed:=uint64(1);seed<3;seed++{
 un:=0
 var worst time.Duration; var tot time.Duration
 tasks:=small(seed,400)
 for i,task:=range tasks { a:=time.Now(); p:=solve(t,task); d:=time.Since(a); tot+=d; if d>worst{worst=d}
  if d>20*time.Millisecond { fmt.Println("slow",i,d,p.Cost,p.Bound,p.Proven,len(task.Pieces),len(task.Stock)) }
  if !p.Proven {un++; fmt.Println(i,p.Cost,p.Bound,len(task.Pieces),len(task.Stock))} }
 fmt.Println("unproven",un,"worst",worst,"mean",tot/time.Duration(len(tasks)))
 }
}
