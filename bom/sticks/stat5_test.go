package sticks_test
import ("testing";"time";"fmt";"math/rand/v2";"silowright/bom/sticks";"silowright/geometry/measure")
func TestStat5(t *testing.T){
 do:=func(name string, n int, gen func(seed uint64) sticks.Task){
  un:=0; var worst,tot time.Duration; ws:=0
  for s:=range n { task:=gen(uint64(s)); a:=time.Now(); p:=solve(t,task); d:=time.Since(a); tot+=d; if d>worst{worst=d;ws=s}; if !p.Proven{un++; if un<4 {fmt.Println(name,s,p.Cost,p.Bound,d)}}}
  fmt.Println(name,"unproven",un,"of",n,"worst",worst,"at",ws,"mean",tot/time.Duration(n))
 }
 do("t120",10,func(s uint64)sticks.Task{return bins(triplets(s,40),1000)})
 do("u250",10,func(s uint64)sticks.Task{return bins(uniform(s,250),150)})
 
 for _,k:=range []int{3,6,12,30} { for _,c:=range []int{30,3000} { for _,st:=range []int{1,2,4} {
  do(fmt.Sprint("metric k",k," c",c," st",st),60,func(s uint64)sticks.Task{
   r:=rand.New(rand.NewPCG(s,uint64(k*c*st)))
   t:=sticks.Task{Kerf:measure.Length(r.IntN(40))/10}
   for range k { t.Pieces=append(t.Pieces,sticks.Piece{Length:measure.Length(500+r.IntN(25000))/10,Count:1+r.IntN(c)}) }
   for j:=range st { l:=6000.0-float64(j*r.IntN(1100)); pr:=int64(l*(0.9+0.2*r.Float64()))
     h:=-1; if j>0&&r.IntN(2)==0 { h=1+r.IntN(4); if r.IntN(2)==0 {pr=0} }
     t.Stock=append(t.Stock,sticks.Stock{Length:measure.Length(l),Price:pr,Have:h}) }
   return t })
 }}}
}
