package geometry

func pipeSiloChecks(s *Silo) []Finding {
	p, u := s.Pipe, s.Spec.Units
	out := HoleChecks(p.Hole, u)
	clamps := Basis{FromMemory, "SAE J1508 worm-drive band clamps"}
	if p.Clamp == "" {
		out = append(out, lengths("pipe-silo.clamp", "pipe_silo.pipe", Stop, p.ClampOver, 0, clamps,
			"no single band clamp closes on %s over pipe and screen: join two in series", p.ClampOver.Both(u)))
	} else {
		spare := minLength(p.ClampMax-p.ClampOver, p.ClampOver-p.ClampMin)
		lv := atLeast(spare, 0, clampSpare)
		out = append(out, lengths("pipe-silo.clamp", "pipe_silo.pipe", lv, p.ClampOver, p.ClampMax, clamps,
			say(lv, "clamp size %s (%s to %s) closes on pipe and screen", "clamp size %s (%s to %s) only just closes on pipe and screen: take the next size or join two", "clamp size %s (%s to %s) does not close on pipe and screen"),
			p.Clamp, p.ClampMin.Both(u), p.ClampMax.Both(u)))
	}
	lvU := atLeast(p.Under, 1e-6, hangsOver)
	lvR := atLeast(p.Round, 1e-6, hangsFrom)
	lvD := atLeast(s.Spec.Pipe.Drape, drapeBad, drapeGood)
	out = append(out,
		lengths("pipe-silo.under", "pipe_silo.outlet_above_screen", lvU, p.Under, hangsOver, practice,
			say(lvU, "it hangs with its screen %s above the drum silo's mesh", "it hangs with its screen only %s above the drum silo's mesh: move its hole down",
				"its screen would lie %s below the drum silo's mesh: it does not hang; move its hole down or set the outlet higher"), p.Under.Abs().Both(u)),
		lengths("pipe-silo.round", "pipe_silo.pipe_out_length", lvR, p.Round, hangsFrom, practice,
			say(lvR, "%s are left between it and the far wall", "only %s are left between it and the far wall", "it is %s too wide for the drum with its fittings: shorten the short pipe or use smaller pipe"), p.Round.Abs().Both(u)),
		lengths("pipe-silo.drape", "pipe_silo.drape", lvD, s.Spec.Pipe.Drape, drapeGood, practice,
			say(lvD, "the screen drapes %s down the pipe for the clamp", "the screen drapes only %s down the pipe: hard to clamp", "the screen drapes only %s down the pipe: the clamp cannot hold it"), s.Spec.Pipe.Drape.Both(u)))
	top := s.Spec.Pipe.Length - p.Hole.Height - p.Hole.Footprint/2
	bottom := p.Hole.Height - p.Hole.Footprint/2 - s.Spec.Pipe.Drape/2
	over := s.Spec.Pipe.Length - p.Hole.Height - p.Hole.Bore()/2
	lvO := atLeast(over, 1e-6, rimOver)
	out = append(out, lengths("pipe-silo.rim", "pipe_silo.length", lvO, over, rimOver, practice,
		say(lvO, "its open end stands %s above its outlet's crown: water cannot come in over it and past the seed",
			"its open end stands only %s above its outlet's crown: water may come in over it and past the seed; use a longer pipe",
			"its open end lies %s below its outlet's crown: use a longer pipe"), over.Abs().Both(u)))
	return append(out,
		gapFinding(u, "pipe-silo.hole-rim", "pipe_silo.outlet_above_screen", "its side hole and its open end", top),
		gapFinding(u, "pipe-silo.hole-screen", "pipe_silo.outlet_above_screen", "its side hole and the screen's bead", bottom))
}
