package render

// Pen is how a layer's lines are drawn, mm.
type Pen struct {
	Width length
	Dash  []float64 // on, off, …; nil is continuous
}

// Pen is the layer's pen: ISO 128 line group 0.5, wide 0.5 and narrow 0.25;
// cut lines are wide, marks narrow and long-dashed so that they are told apart
// in black and white.
func (l Layer) Pen() Pen {
	switch l {
	case Cut:
		return Pen{Width: 0.5}
	case Outline:
		return Pen{Width: 0.5}
	case Drill:
		return Pen{Width: 0.35}
	case Mark:
		return Pen{Width: 0.18, Dash: []float64{6, 1.5}}
	case Hidden:
		return Pen{Width: 0.25, Dash: []float64{3, 1}}
	case Centre:
		return Pen{Width: 0.25, Dash: []float64{8, 1.2, 0.6, 1.2}}
	case Water:
		return Pen{Width: 0.35}
	case Dimension, Thin:
		return Pen{Width: 0.25}
	}
	return Pen{Width: 0.18}
}

// Group is the layer's name: the id of its group in an SVG file.
func (l Layer) Group() string {
	switch l {
	case Cut:
		return "cut"
	case Drill:
		return "drill"
	case Mark:
		return "mark"
	case Notes:
		return "note"
	case Outline:
		return "outline"
	case Thin:
		return "thin"
	case Hidden:
		return "hidden"
	case Centre:
		return "centre"
	case Dimension:
		return "dimension"
	}
	return "water"
}

// Layers lists every layer in drawing order.
func Layers() []Layer {
	return []Layer{Thin, Hidden, Centre, Water, Mark, Drill, Outline, Dimension, Cut, Notes}
}
