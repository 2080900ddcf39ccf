// The picture of a drum with every measure drawn on it. The one being asked
// for is lit, and words say how it is taken.

import { $, draw, put, words } from "./dom.js";
import { bare } from "./fields.js";

const how = {
  "drum.circumference": "Tape once round the plain wall, between the hoops, level and snug. Read where the tape meets its own end.",
  "drum.outside": "Straight across the plain wall, outside to outside. Measured twice, a quarter turn apart; take the mean.",
  "drum.height": "From the ground to the top of the upper chime, the drum standing on its foot.",
  "drum.wall": "The thickness of the wall, read at a hole or a cut edge with a caliper.",
  "drum.foot_outside": "Across the ring the drum stands on, outside to outside.",
  "drum.foot_height": "From the ground up to where the wall has reached its full width.",
  "drum.head_recess": "How far the head lies below the top of the upper chime: a straight edge over the chime, and a rule down.",
  "drum.hoops.from": "From the ground up to the lower edge of the hoop.",
  "drum.hoops.to": "From the ground up to the upper edge of the hoop.",
  "drum.hoops.outside": "Across the hoop at its widest: tape round it and divide by 3.1416, or a large caliper.",
  "drum.label": "A short name or letter, to tell this kind of drum from others. Files are named for it.",
  "drum.count": "How many drums of this kind you have.",
  name: "Printed on every page of the shop pack.",
  units: "What a bare number means: inches or millimetres. A unit written behind a number always wins.",
  drum_silos: "One drum makes one silo.",
  pipe_silos: "Small silos of sewer pipe, for the smallest seed. 0 for none.",
};

// a drum 200 wide, 300 high; its wall from x 150 to 350
const L = 150, R = 350, MID = 250, TOP = 46, GROUND = 366, FOOT = GROUND - 40;
const hoops = [{ low: 262, up: 242 }, { low: 142, up: 122 }];

let parts = new Map();

function arrow(x1, y1, x2, y2) {
  const a = Math.atan2(y2 - y1, x2 - x1), n = 8;
  const head = (x, y, t) => `M${x} ${y}L${(x + n * Math.cos(t + 0.35)).toFixed(1)} ${(y + n * Math.sin(t + 0.35)).toFixed(1)}M${x} ${y}L${(x + n * Math.cos(t - 0.35)).toFixed(1)} ${(y + n * Math.sin(t - 0.35)).toFixed(1)}`;
  return `M${x1} ${y1}L${x2} ${y2}${head(x1, y1, a)}${head(x2, y2, a + Math.PI)}`;
}

// dim is one measure: its line, its name above the value, in a place of its
// own where no other line runs.
function dim(key, label, path, x, y, anchor = "start", extra = "") {
  const g = draw("g", { class: "dim" },
    extra && draw("path", { d: extra, class: "reach" }),
    draw("path", { d: path, class: "span" }),
    draw("text", { x, y, "text-anchor": anchor, class: "name" }, label),
    draw("text", { x, y: y + 16, "text-anchor": anchor, class: "size" }));
  parts.set(key, g);
  return g;
}

// hoopDims are the three measures of a hoop: the lowest on the lower hoop, any
// other on the upper, shown only while it is asked for.
function hoopDims(n) {
  const h = hoops[n], all = [
    dim(`hoops${n}.from`, "lower edge", arrow(R + 52, GROUND, R + 52, h.low), R + 58, n ? 200 : 302, "start", `M${R} ${h.low}H${R + 58}`),
    dim(`hoops${n}.to`, "upper edge", arrow(R + 28, GROUND, R + 28, h.up), R + 34, h.up - 22, "start", `M${R} ${h.up}H${R + 34}`),
    dim(`hoops${n}.outside`, "across the hoop", arrow(L - 9, h.up + 10, R + 9, h.up + 10), MID, h.low + 18, "middle"),
  ];
  if (n) for (const g of all) g.classList.add("other");
  return all;
}

// picture draws it afresh.
export function picture() {
  parts = new Map();
  const side = (x, out, up) => hoops.map((h) => up
    ? `L${x} ${h.low}q${out * 9} 0 ${out * 9} -5V${h.up + 5}q0 -5 ${-out * 9} -5` : `L${x} ${h.up}q${out * 9} 0 ${out * 9} 5V${h.low - 5}q0 5 ${-out * 9} 5`);
  const outline = `M${L + 14} ${GROUND}V${GROUND - 12}Q${L + 14} ${FOOT} ${L} ${FOOT}${side(L, -1, true).join("")}`
    + `L${L} ${TOP + 22}Q${L} ${TOP + 12} ${L + 10} ${TOP + 10}V${TOP}H${R - 10}V${TOP + 10}Q${R} ${TOP + 12} ${R} ${TOP + 22}`
    + `${side(R, 1, false).reverse().join("")}L${R} ${FOOT}Q${R - 14} ${FOOT} ${R - 14} ${GROUND - 12}V${GROUND}Z`;
  const svg = draw("svg", { viewBox: "-60 0 650 440", class: "drum", role: "img", "aria-label": "A drum standing on its foot, with the place of every measure" },
    draw("path", { d: outline, class: "body" }),
    draw("path", { d: `${hoops.map((h) => `M${L} ${h.low}H${R}M${L} ${h.up}H${R}`).join("")}M${L} ${FOOT}H${R}`, class: "crease" }),
    draw("path", { d: `M${L + 16} ${TOP + 20}H${R - 16}`, class: "hidden-line" }), // the head, inside
    draw("path", { d: `M-50 ${GROUND}H580`, class: "ground" }),
    draw("path", { d: `M-42 ${GROUND}l-8 8m24 -8l-8 8m24 -8l-8 8m575 -8l-8 8m24 -8l-8 8`, class: "crease" }),
    dim("drum.outside", "across the wall", arrow(L, 206, R, 206), MID, 222, "middle"),
    dim("drum.circumference", "round the wall", `M${L} 200C${L + 40} 218 ${R - 40} 218 ${R} 200`, MID, 172, "middle", `M${L} 200C${L + 40} 190 ${R - 40} 190 ${R} 200`),
    dim("drum.height", "height", arrow(134, GROUND, 134, TOP), 126, 196, "end", `M126 ${TOP}H${L + 8}`),
    dim("drum.wall", "wall thickness", arrow(R - 26, 96, R, 96) + `M${R} 96h26`, R + 32, 84, "start", `M${R - 6} 86V106`),
    dim("drum.foot_outside", "across the foot", arrow(L + 14, GROUND + 22, R - 14, GROUND + 22), MID, GROUND + 40, "middle", `M${L + 14} ${GROUND}v28M${R - 14} ${GROUND}v28`),
    dim("drum.foot_height", "height of the foot", arrow(L - 40, GROUND, L - 40, FOOT), L - 46, GROUND - 34, "end", `M${L} ${FOOT}h-46`),
    dim("drum.head_recess", "head below the chime", arrow(R - 60, TOP, R - 60, TOP + 20) + `M${R - 60} ${TOP}V24H${R - 30}`, R - 26, 16),
    ...hoopDims(0), ...hoopDims(1),
  );
  put($("drum-picture"), svg);
}

// placeOf is where the picture shows a key.
function placeOf(key) {
  const hoop = /hoops\[(\d+)\]\.(\w+)$/.exec(key || "");
  return hoop ? `hoops${Math.min(Number(hoop[1]), 1)}.${hoop[2]}` : bare(key || "");
}

// values writes the measures as typed on the picture.
export function values(answer) {
  for (const f of answer.fields || []) {
    const g = parts.get(placeOf(f.key));
    if (!g || /^drum\[(?!0\])/.test(f.key) || /hoops\[(?![01]\])/.test(f.key)) continue;
    words(g.querySelector(".size"), f.value ? f.both || f.value : "");
    g.classList.toggle("known", Boolean(f.value));
  }
  // round or across: of the two only one is measured
  const round = parts.get("drum.circumference"), across = parts.get("drum.outside");
  for (const [g, other] of [[round, across], [across, round]]) g.classList.toggle("moot", !g.classList.contains("known") && (other.classList.contains("known") || g === across));
}

// light lights the measure of a key.
export function light(key) {
  const place = placeOf(key), b = bare(key || "");
  for (const [k, g] of parts) g.classList.toggle("lit", k === place);
  const lit = parts.get(place);
  if (lit) lit.parentNode.append(lit); // on top
  $("drum-figure").classList.toggle("asking", Boolean(lit));
  // the hoop that is asked about has the room to itself
  $("drum-figure").classList.toggle("other-hoop", place.startsWith("hoops1"));
  if (how[b]) words($("drum-words"), how[b]);
}

addEventListener("focusin", (e) => {
  const field = e.target.closest?.("[data-key]");
  if (field && field.closest("#measure")) light(field.dataset.key);
});
