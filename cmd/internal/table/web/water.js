// Step 4: what the water does, in sentences and rows as the server gives them.

import { $, el, put, capital } from "./dom.js";
import { onAnswer } from "./work.js";

onAnswer((answer, which) => {
  if (which !== "slow" || !answer.water) return;
  const drums = [...new Set(answer.water.map((w) => w.drum))];
  put($("water-words"), drums.map((d) => [
    el("h3", {}, drums.length > 1 ? `A silo of drum kind ${d}` : "What one silo passes and holds"),
    el("dl", { class: "rows" }, answer.water.filter((w) => w.drum === d).map((w) => el("div", {}, el("dt", {}, capital(w.name)), el("dd", {}, w.both)))),
  ]));
});
