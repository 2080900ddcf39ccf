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

// a drum 200 wide, 300 high; its wall from x 110 to 310
const L = 110, R = 310, TOP = 40, GROUND = 360;
const hoops = [[232, 250], [118, 136]];

let parts = new Map();

function arrow(x1, y1, x2, y2) {
  const a = Math.atan2(y2 - y1, x2 - x1), n = 8;
  const head = (x, y, t) => `M${x} ${y}L${(x + n * Math.cos(t + 0.35)).toFixed(1)} ${(y + n * Math.sin(t + 0.35)).toFixed(1)}M${x} ${y}L${(x + n * Math.cos(t - 0.35)).toFixed(1)} ${(y + n * Math.sin(t - 0.35)).toFixed(1)}`;
  return `M${x1} ${y1}L${x2} ${y2}${head(x1, y1, a)}${head(x2, y2, a + Math.PI)}`;
}

function dim(key, label, path, x, y, anchor = "start", extra = "") {
  const g = draw("g", { class: "dim" },
    extra && draw("path", { d: extra, class: "reach" }),
    draw("path", { d: path, class: "span" }),
    draw("text", { x, y, "text-anchor": anchor, class: "name" }, label),
    draw("text", { x, y: y + 15, "text-anchor": anchor, class: "size" }));
  parts.set(key, g);
  return g;
}

// picture draws it afresh.
export function picture() {
  parts = new Map();
  const foot = GROUND - 34;
  const outline = `M${L + 12} ${GROUND}L${L + 12} ${GROUND - 10}Q${L + 12} ${foot} ${L} ${foot}`
    + `L${L} ${hoops[0][1]}q-9 0 -9 -5V${hoops[0][0] + 5}q0 -5 9 -5`
    + `L${L} ${hoops[1][1]}q-9 0 -9 -5V${hoops[1][0] + 5}q0 -5 9 -5`
    + `L${L} ${TOP + 22}Q${L} ${TOP + 12} ${L + 10} ${TOP + 10}V${TOP}H${R - 10}V${TOP + 10}Q${R} ${TOP + 12} ${R} ${TOP + 22}`
    + `L${R} ${hoops[1][0]}q9 0 9 5V${hoops[1][1] - 5}q0 5 -9 5`
    + `L${R} ${hoops[0][0]}q9 0 9 5V${hoops[0][1] - 5}q0 5 -9 5`
    + `L${R} ${foot}Q${R - 12} ${foot} ${R - 12} ${GROUND - 10}L${R - 12} ${GROUND}Z`;
  const svg = draw("svg", { viewBox: "0 0 470 430", class: "drum", role: "img", "aria-label": "A drum standing on its foot, with the place of every measure" },
    draw("path", { d: outline, class: "body" }),
    draw("path", { d: `M${L} ${hoops[0][0]}H${R}M${L} ${hoops[0][1]}H${R}M${L} ${hoops[1][0]}H${R}M${L} ${hoops[1][1]}H${R}M${L} ${foot}H${R}`, class: "crease" }),
    // the upper corner cut open to show head and wall
    draw("path", { d: `M${L + 16} ${TOP + 20}H${R - 16}`, class: "hidden-line" }),
    draw("path", { d: `M20 ${GROUND}H450`, class: "ground" }),
    draw("path", { d: `M28 ${GROUND}l-8 8m24 -8l-8 8m24 -8l-8 8m376 -8l-8 8m24 -8l-8 8m24 -8l-8 8`, class: "crease" }),
    dim("drum.circumference", "round the wall", `M${L} 178C${L + 40} 198 ${R - 40} 198 ${R} 178`, 210, 176, "middle", `M${L} 178C${L + 40} 166 ${R - 40} 166 ${R} 178`),
    dim("drum.outside", "across the wall", arrow(L, 196, R, 196), 210, 190, "middle"),
    dim("drum.height", "height", arrow(36, GROUND, 36, TOP), 42, 200, "start", `M28 ${TOP}H${L + 8}`),
    dim("drum.wall", "wall thickness", arrow(R - 26, 76, R, 76) + `M${R} 76h26`, R + 30, 74, "start", `M${R - 6} 66V86`),
    dim("drum.foot_outside", "across the foot", arrow(L + 12, GROUND + 26, R - 12, GROUND + 26), 210, GROUND + 46, "middle", `M${L + 12} ${GROUND}v32M${R - 12} ${GROUND}v32`),
    dim("drum.foot_height", "height of the foot", arrow(R + 24, GROUND, R + 24, foot), R + 30, GROUND - 20, "start", `M${R} ${foot}h30`),
    dim("drum.head_recess", "head below the chime", arrow(R - 60, TOP, R - 60, TOP + 20) + `M${R - 60} ${TOP}V18H${R - 30}`, R - 26, 16, "start"),
    dim("drum.hoops.from", "hoop, lower edge", arrow(R + 62, GROUND, R + 62, hoops[0][1]), R + 68, 290, "start", `M${R} ${hoops[0][1]}h68`),
    dim("drum.hoops.to", "hoop, upper edge", arrow(R + 40, GROUND, R + 40, hoops[0][0]), R + 46, 216, "start", `M${R} ${hoops[0][0]}h46`),
    dim("drum.hoops.outside", "across the hoop", arrow(L - 9, 127, R + 9, 127), 210, 108, "middle"),
  );
  put($("drum-picture"), svg);
}

// values writes the measures as typed on the picture.
export function values(answer) {
  for (const f of answer.fields || []) {
    const g = parts.get(bare(f.key));
    if (!g || /^drum\[(?!0\])/.test(f.key) || /hoops\[(?!0\])/.test(f.key)) continue;
    words(g.querySelector(".size"), f.value ? f.both || f.value : "");
    g.classList.toggle("known", Boolean(f.value));
  }
}

// light lights the measure of a key.
export function light(key) {
  const b = bare(key || "");
  for (const [k, g] of parts) g.classList.toggle("lit", k === b);
  const lit = parts.get(b);
  if (lit) lit.parentNode.append(lit); // on top
  $("drum-figure").classList.toggle("asking", parts.has(b));
  if (how[b]) words($("drum-words"), how[b]);
}

addEventListener("focusin", (e) => {
  const field = e.target.closest?.("[data-key]");
  if (field && field.closest("#measure")) light(field.dataset.key);
});
