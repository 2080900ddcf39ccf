package work

// evening is the end of the working day that t lies in, counted from the
// morning of its 24 hours.
func (s *shop) evening(t ticks) ticks { return t/night*night + s.day }

// open is the first working moment from t on.
func (s *shop) open(t ticks) ticks {
	if t < s.evening(t) {
		return t
	}
	return (t/night + 1) * night
}

// start is the first moment from t on at which work of so many ticks may be
// begun; whole work goes to the next morning when the day is too short for it.
func (s *shop) start(t, work ticks, whole bool) ticks {
	t = s.open(t)
	if whole && t+work > s.evening(t) {
		t = (t/night + 1) * night
	}
	return t
}

// after is when the crew ends so much work begun at t.
func (s *shop) after(t, work ticks) ticks {
	t = s.open(t)
	left := s.evening(t) - t
	if work <= left {
		return t + work
	}
	work -= left
	days := (work - 1) / s.day // full ones before the last
	return (t/night+1+days)*night + work - days*s.day
}

// daysTo is the number of the day in which work that ends at t ends.
func (s *shop) daysTo(t ticks) int {
	if t == 0 {
		return 0
	}
	return int((t-1)/night) + 1
}
