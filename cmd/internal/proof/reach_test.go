package proof

import (
	"go/ast"
	"path"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// reach tells which declarations lead to which: what a body or a value names,
// by Go's own parser, without types. A name after a dot that is no package's
// may be any method of that name in a room that is imported.
type reach struct {
	uses    map[string]map[string]bool // by room and name: names with their room, ".Method" for a method
	methods map[string][]string
	imports map[string][]string // room by room, "room test" for what its tests import
}

func reading(list []source) reach {
	r := reach{uses: map[string]map[string]bool{}, methods: map[string][]string{}, imports: map[string][]string{}}
	for _, s := range list {
		imports := map[string]string{}
		for _, i := range s.Imports {
			p, _ := strconv.Unquote(i.Path.Value)
			if room, ours := strings.CutPrefix(p, "silowright/"); ours {
				name := path.Base(room)
				if i.Name != nil {
					name = i.Name.Name
				}
				imports[name] = room
				from := s.room
				if s.test {
					from += " test"
				}
				r.imports[from] = append(r.imports[from], room)
			}
		}
		put := func(name string, n ast.Node) {
			key := s.room + "." + name
			if r.uses[key] == nil {
				r.uses[key] = map[string]bool{}
			}
			ast.Inspect(n, func(n ast.Node) bool {
				switch n := n.(type) {
				case *ast.SelectorExpr:
					if x, ok := n.X.(*ast.Ident); ok && imports[x.Name] != "" {
						r.uses[key][imports[x.Name]+"."+n.Sel.Name] = true
						return false
					}
					r.uses[key]["."+n.Sel.Name] = true
				case *ast.Ident:
					r.uses[key][s.room+"."+n.Name] = true
				}
				return true
			})
		}
		for _, d := range s.Decls {
			switch d := d.(type) {
			case *ast.FuncDecl:
				put(d.Name.Name, d)
				if d.Recv != nil {
					r.methods[d.Name.Name] = append(r.methods[d.Name.Name], s.room+"."+d.Name.Name)
				}
			case *ast.GenDecl:
				for _, spec := range d.Specs {
					if v, ok := spec.(*ast.ValueSpec); ok {
						for _, n := range v.Names {
							put(n.Name, v)
						}
					}
				}
			}
		}
	}
	return r
}

// from lists all that one declaration of a test leads to.
func (r reach) from(start string) map[string]bool {
	at := start[:strings.LastIndex(start, ".")]
	near := map[string]bool{at: true}
	for todo := slices.Concat(r.imports[at+" test"], r.imports[at]); len(todo) > 0; todo = todo[1:] {
		if !near[todo[0]] {
			near[todo[0]] = true
			todo = append(todo, r.imports[todo[0]]...)
		}
	}
	seen := map[string]bool{start: true}
	for todo := []string{start}; len(todo) > 0; {
		at := todo[len(todo)-1]
		todo = todo[:len(todo)-1]
		for name := range r.uses[at] {
			next := []string{name}
			if method, ok := strings.CutPrefix(name, "."); ok {
				next = r.methods[method]
			}
			for _, n := range next {
				if !seen[n] && r.uses[n] != nil && near[n[:strings.LastIndex(n, ".")]] {
					seen[n] = true
					todo = append(todo, n)
				}
			}
		}
	}
	return seen
}

// The test that a number's row names leads to where the number is declared.
func TestTestsReachTheNumbers(t *testing.T) {
	r := reading(sources(t))
	led := map[string]map[string]bool{}
	for _, row := range Numbers() {
		room, test, _ := strings.Cut(strings.TrimPrefix(row.Test, "./"), " ")
		key := room + "." + test
		if led[key] == nil {
			led[key] = r.from(key)
		}
		for _, name := range row.of {
			if !led[key][name] {
				t.Errorf("%s: %s does not lead to %s", row.What, row.Test, name)
			}
		}
	}
	// And it does tell: a test of stoppers knows nothing of sea water.
	if far := r.from("geometry/stock.TestClamps"); far["nursery/sea.eosPure"] || !far["geometry/stock.Clamps"] {
		t.Errorf("TestClamps leads to %d declarations", len(far))
	}
}
