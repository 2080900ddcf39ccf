package house

import (
	"go/ast"
	"go/token"
	"go/types"
	"slices"
	"strings"
	"testing"
)

// kept are exported for a reader outside the module, or for the language's own
// rules; each says why.
var kept = map[string]string{
	"bom/basket.Limit":     bound,
	"bom/basket.Million":   bound,
	"bom/cover.Limit":      bound,
	"bom/money.Limit":      bound,
	"bom/rolls.MostPieces": bound,
	"bom/work.MaxDays":     bound,

	"geometry.ArcOf":   shop,
	"geometry.ChordOf": shop,

	"geometry/measure.Area.SquareInches": either,
	"geometry/measure.Pressure.KPa":      either,
	"geometry/measure.Area.Quantity":     either,
	"geometry/measure.Volume.Quantity":   either,
	"geometry/measure.Pressure.Quantity": either,

	"bom/basket.OrderOf":                   "the workbook's sums are held against it",
	"render.Lay":                           "tiles for whoever prints one drawing; the PDF is held against it",
	"render.Tile.Name":                     "likewise",
	"render.Tiling.Joins":                  "likewise",
	"nursery/manifold.System.WithSettings": "a throttled system solved anew, as its tests and the nursery's do",
	"render.Drawing.TurnedWords":           "words on a drawing, beside Words; both backends are tried with it",
}

// libraries are rooms of tables and published relations, for whoever reads the
// module; of those what the room itself uses may be exported.
var libraries = []string{"geometry/stock", "nursery", "nursery/flow", "nursery/manifold", "nursery/seed"}

// The reasons that several share.
const (
	bound  = "a bound that the input is held to, for whoever makes the input"
	shop   = "shop geometry beside Sagitta, for whoever marks a wall"
	either = "a quantity is read and told in either system"
)

// called are methods that the standard library calls by their name.
var called = []string{"String", "Error", "Unwrap", "Is", "MarshalText", "UnmarshalText", "MarshalJSON", "UnmarshalJSON", "Format", "Write", "Len", "Less", "Swap", "Push", "Pop"}

// Nothing is exported that no other package uses. A type is used as well when
// something used holds it, takes it or returns it, a constant when its type
// or another of its group is, and an error when it is one to ask errors.Is about. Tests of other packages count for render/outside alone.
func TestExportedIsUsed(t *testing.T) {
	h := wholeHouse(t)
	used, own := map[types.Object]bool{}, map[types.Object]bool{}
	for _, r := range h.order {
		if r.info == nil {
			continue
		}
		for _, o := range r.info.Uses {
			if o.Pkg() != nil && o.Pkg() != r.types && strings.HasPrefix(o.Pkg().Path(), module) {
				used[origin(o)] = true
			}
			own[origin(o)] = true
		}
	}
	outside := h.rooms[module+"/render/outside"]
	for _, r := range h.order {
		for _, f := range r.tests {
			ast.Inspect(f, func(n ast.Node) bool {
				if s, ok := n.(*ast.SelectorExpr); ok {
					if x, ok := s.X.(*ast.Ident); ok && x.Name == outside.name {
						if o := outside.types.Scope().Lookup(s.Sel.Name); o != nil {
							used[o] = true
						}
					}
				}
				return true
			})
		}
	}
	reach(used)
	groups := h.beside()
	var idle []string
	for _, r := range h.order {
		if r.types == nil || r.name == "main" {
			continue
		}
		library := slices.Contains(libraries, strings.TrimPrefix(r.path, module+"/"))
		for _, o := range h.exported(r.types) {
			name := strings.TrimPrefix(r.path, module+"/") + "." + nameOf(o)
			inUse := used[o] || library && own[o] || sentinel(o) || valueOf(o, used) || slices.ContainsFunc(groups[o], func(c types.Object) bool { return used[c] })
			if !inUse && kept[name] == "" {
				line := h.fset.Position(o.Pos()).String() + ": " + name + " is exported and no other package uses it"
				if !own[o] {
					line += ", nor its own but for tests"
				}
				idle = append(idle, line)
			}
			if inUse && kept[name] != "" {
				t.Errorf("%s is used after all: take it off the list", name)
			}
		}
	}
	slices.Sort(idle)
	for _, i := range idle {
		t.Error(i)
	}
}

// origin is the object as declared, of a generic one's instances too.
func origin(o types.Object) types.Object {
	switch x := o.(type) {
	case *types.Func:
		return x.Origin()
	case *types.Var:
		return x.Origin()
	}
	return o
}

// reach marks the types that used objects hold, take or return, until no more
// are found.
func reach(used map[types.Object]bool) {
	seen := map[types.Type]bool{}
	var walk func(types.Type)
	walk = func(u types.Type) {
		if u == nil || seen[u] {
			return
		}
		seen[u] = true
		switch x := u.(type) {
		case *types.Named:
			used[x.Origin().Obj()] = true
			walk(x.Underlying())
			for i := range x.TypeArgs().Len() {
				walk(x.TypeArgs().At(i))
			}
		case *types.Alias:
			used[x.Obj()] = true
			walk(types.Unalias(x))
		case *types.Pointer:
			walk(x.Elem())
		case *types.Slice:
			walk(x.Elem())
		case *types.Array:
			walk(x.Elem())
		case *types.Map:
			walk(x.Key())
			walk(x.Elem())
		case *types.Chan:
			walk(x.Elem())
		case *types.Signature:
			walk(x.Params())
			walk(x.Results())
		case *types.Tuple:
			for i := range x.Len() {
				walk(x.At(i).Type())
			}
		case *types.Struct:
			for i := range x.NumFields() {
				if x.Field(i).Exported() {
					walk(x.Field(i).Type())
				}
			}
		}
	}
	var list []types.Object
	for o := range used {
		list = append(list, o)
	}
	for _, o := range list {
		walk(o.Type())
	}
}

// exported lists a package's exported names, and the exported methods of its
// exported types that the standard library does not call.
func (h *house) exported(p *types.Package) []types.Object {
	var out []types.Object
	for _, n := range p.Scope().Names() {
		o := p.Scope().Lookup(n)
		if !o.Exported() {
			continue
		}
		out = append(out, o)
		named, ok := o.Type().(*types.Named)
		if _, isType := o.(*types.TypeName); !ok || !isType || types.IsInterface(named) {
			continue
		}
		for i := range named.NumMethods() {
			if m := named.Method(i); m.Exported() && !slices.Contains(called, m.Name()) && !h.promised(named, m) {
				out = append(out, m)
			}
		}
	}
	return out
}

// promised reports whether an interface of the module asks for the method.
func (h *house) promised(named *types.Named, m *types.Func) bool {
	for _, r := range h.order {
		if r.types == nil {
			continue
		}
		for _, n := range r.types.Scope().Names() {
			i, ok := r.types.Scope().Lookup(n).Type().Underlying().(*types.Interface)
			if !ok || !types.Implements(named, i) && !types.Implements(types.NewPointer(named), i) {
				continue
			}
			for k := range i.NumMethods() {
				if i.Method(k).Name() == m.Name() {
					return true
				}
			}
		}
	}
	return false
}

// beside are, for each constant, those declared in one group with it.
func (h *house) beside() map[types.Object][]types.Object {
	out := map[types.Object][]types.Object{}
	for _, r := range h.order {
		for _, f := range r.files {
			for _, d := range f.Decls {
				g, ok := d.(*ast.GenDecl)
				if !ok || g.Tok != token.CONST {
					continue
				}
				var group []types.Object
				for _, s := range g.Specs {
					for _, id := range s.(*ast.ValueSpec).Names {
						group = append(group, r.info.Defs[id])
					}
				}
				for _, o := range group {
					out[o] = group
				}
			}
		}
	}
	return out
}

// valueOf reports whether o is a constant of its package's own type and that
// type is used: whoever has one may compare it.
func valueOf(o types.Object, used map[types.Object]bool) bool {
	c, ok := o.(*types.Const)
	if !ok {
		return false
	}
	named, ok := c.Type().(*types.Named)
	return ok && named.Obj().Pkg() == o.Pkg() && used[named.Obj()]
}

// sentinel reports whether o is an error that callers may ask errors.Is about.
func sentinel(o types.Object) bool {
	_, ok := o.(*types.Var)
	return ok && strings.HasPrefix(o.Name(), "Err") && o.Type().String() == "error"
}

// nameOf is a name with its receiver's type before it.
func nameOf(o types.Object) string {
	if f, ok := o.(*types.Func); ok {
		if recv := f.Signature().Recv(); recv != nil {
			u := recv.Type()
			if p, ok := u.(*types.Pointer); ok {
				u = p.Elem()
			}
			if n, ok := u.(*types.Named); ok {
				return n.Obj().Name() + "." + o.Name()
			}
		}
	}
	return o.Name()
}
