package sheets

// The cautions that stand at the build steps. Sources are public; where none
// is known the caution says so.
var (
	cautionSaw = caution{"Eye protection at every saw and drill; guards on; hands clear of the blade's far side.",
		"29 CFR 1910.133, 1910.138, 1910.212, from memory"}
	cautionKickback = caution{"Clamp the curved wall and back the cut with wood: a hole saw that catches throws the part. No loose gloves, sleeves or hair near a turning saw.",
		"common practice, no source"}
	cautionCut = caution{"Saw only a drum that passed step 1: residue in the seams can catch fire at the blade.",
		"HSE FOD 8-2010; HSA (Ireland) safety alert, 2017"}
	cautionEdge = caution{"Fresh-sawn edges cut skin. The wall is thinner than the 1/4 in (6.4 mm) edge advised for a hand hold: round the slot's edges well, or sleeve them with split hose.",
		"NIOSH Pub. 94-110, coupling notes, from memory"}
	cautionPoints = caution{"Screw points that stick out tear hands and hoses: nip and file every one flush before the part is carried. Points fly off: eye protection.",
		"common practice, no source"}
	cautionSealant = caution{"Ventilate while sealant cures. Give it the maker's full cure (a day is usual, up to 7 days for neutral cure), then rinse and soak, before seed goes in.",
		"makers' usual cure times; rinse and soak: common practice, no source"}
	cautionCement = caution{"Primer and cement give off solvent vapour that burns: open air or a strong draught, no flame, spark or smoking. Limit for tetrahydrofuran 200 ppm. Gloves and eye protection.",
		"OSHA limit; 29 CFR 1910.1000 from memory; the label and data sheet of yours hold"}
	cautionResin = caution{"Polyester resin gives off styrene: open air or a strong draught, no flame. Limits 100 ppm and 50 ppm. Gloves that resist it, eye protection; mix small lots, since a thick pot of resin heats itself. Acetone burns.",
		"OSHA 100 ppm, NIOSH 50 ppm styrene; heat of setting: common practice, no source"}
	cautionLift = caution{"Two people lift and turn a full or wet body. One person's limit is 51 lb (23 kg) under the best conditions, less when reaching, twisting or wet.",
		"NIOSH lifting equation, Pub. 94-110, revised 2021"}
	cautionSeed = caution{"No seed before everything has cured to the maker's full time, been rinsed, and soaked with the water changed.",
		"common practice, no source"}
	cautionPower = caution{"Electricity near water: every pump and lamp on ground-fault protection that trips near 5 mA (elsewhere a 30 mA residual-current device), plugs above any splash, drip loops. A licensed electrician does the fixed wiring.",
		"29 CFR 1910.304(b)(3); 30 mA from memory"}
)
