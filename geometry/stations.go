package geometry

// stations works out the heights at which the drum is parted, kerfs counted.
// The first cut runs right under the uppermost hoop, so that its kerf comes
// out of the lower piece and the base keeps its whole hoop; the second kerf
// lies below the ring's strip.
func stations(s Spec) Stations {
	d := s.Drum
	top := d.topHoop()
	var st Stations
	st.BaseCut = top.From
	st.RingTop = top.From - s.Saw.Kerf
	st.RingBottom = st.RingTop - s.Ring.Width
	st.Rim = st.RingBottom - s.Saw.Kerf
	st.BaseHeight = d.Height - top.From
	st.BaseHoop = Hoop{From: d.Height - top.To, To: d.Height - top.From, Outside: top.Outside}
	st.HeadPanel = d.HeadRecess + d.Wall // the head is taken as thick as the wall
	st.BodyHoops = append(st.BodyHoops, d.Hoops[:len(d.Hoops)-1]...)
	return st
}

// bedFloor is the mesh's upper face above the foot's underside: the foot, taken
// as thick as the wall, and the mesh.
func (s Spec) bedFloor() length { return s.Drum.Wall + s.Mesh.Thickness }

// insideVolume is the volume inside the lower piece from the foot up to a
// height, hoops left out: the foot's frustum, then the bore.
func (d Drum) insideVolume(z length) volume {
	if z <= 0 {
		return 0
	}
	cone := z
	if cone > d.FootHeight {
		cone = d.FootHeight
	}
	v := frustum(d.FootInside(), d.insideAt(cone), cone)
	if z > cone {
		v += d.Bore().Disc().Times(z - cone)
	}
	return v
}
