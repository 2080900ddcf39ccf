// Step 4: what the water and the seed do, in rows and sentences as the server
// gives them.

import { $, el, put, capital } from "./dom.js";
import { last, onAnswer } from "./work.js";

const about = /^(water|manifold|main|lateral|pump|failure|seed)\./;
const signs = { stop: "✕ Stop", caution: "! Caution", ok: "✓ Holds" };
const order = ["stop", "caution", "ok"];

onAnswer((answer, which) => {
  if (which !== "slow" || !answer.water) return;
  const drums = [...new Set(answer.water.map((w) => w.drum))];
  const rows = drums.flatMap((d) => [
    el("h3", {}, drums.length > 1 ? `A silo of drum kind ${d}` : "What one silo passes and holds"),
    el("dl", { class: "rows" }, answer.water.filter((w) => w.drum === d).map((w) => el("div", {}, el("dt", {}, capital(w.name)), el("dd", {}, w.both)))),
  ]);
  const found = (last.answer?.findings || []).filter((f) => about.test(f.id)).sort((a, b) => order.indexOf(a.level) - order.indexOf(b.level));
  const says = found.length ? [el("h3", {}, "What comes of it"),
    el("ul", { class: "holds" }, found.map((f) => el("li", {}, el("b", {}, `${signs[f.level]} `), `${capital(f.says)}.`, el("span", { class: "basis" }, ` ${f.basis}`))))] : [];
  put($("water-words"), [...says, ...rows]);
});
