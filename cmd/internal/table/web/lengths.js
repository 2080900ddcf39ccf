// Lengths as the hand moves them: millimetres inside, written as the shop
// writes them. What the server answers is always worked out from the text.

export const INCH = 25.4;

const gcd = (a, b) => b ? gcd(b, a % b) : a;

// inches writes millimetres as inches with a fraction of at most 1/of.
export function inches(mm, of = 64) {
  const sign = mm < 0 ? "-" : "";
  const n = Math.round(Math.abs(mm) / INCH * of);
  const whole = Math.floor(n / of), part = n % of;
  if (!part) return `${sign}${whole}`;
  const d = gcd(part, of);
  return `${sign}${whole ? `${whole} ` : ""}${part / d}/${of / d}`;
}

const round = (mm) => String(Math.round(mm * 10) / 10);

// written is a length as it stands in a job file in these units.
export const written = (mm, units) => units === "in" ? inches(mm) : round(mm);

// both says a length in the job's unit with the other in brackets.
export const both = (mm, units) => units === "in" ? `${inches(mm, 16)} in (${round(mm)} mm)` : `${round(mm)} mm (${inches(mm, 16)} in)`;

// step is how far a hole moves at a press or snaps to: an eighth of an inch or
// 5 mm; finer, a thirty-second or 1 mm.
export const step = (units, fine) => units === "in" ? (fine ? INCH / 32 : INCH / 8) : fine ? 1 : 5;
