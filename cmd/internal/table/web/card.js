// The card of one finding, and the cards that stand beside the field which
// causes them.

import { el, put, capital } from "./dom.js";

const levels = {
  stop: { sign: "✕", word: "Stop" },
  caution: { sign: "!", word: "Caution" },
  ok: { sign: "✓", word: "Holds" },
};

// nameOf tells a finding of one kind of drum from the others.
export const nameOf = (f) => `${f.id} ${f.drum || ""}`;
export const troubles = (answer) => (answer?.findings || []).filter((f) => f.level !== "ok");
export const many = (answer) => new Set((answer?.findings || []).map((f) => f.drum).filter(Boolean)).size > 1;

export function badge(level) {
  const l = levels[level] || levels.caution;
  return el("span", { class: "badge" }, el("span", { "aria-hidden": "true" }, l.sign), ` ${l.word}`);
}

// beside shows the findings of one field under it.
export function beside(node, key, answer) {
  if (answer.error) return; // the findings are of an older job
  const mine = troubles(answer).filter((f) => f.field === key);
  const text = JSON.stringify(mine);
  if (node.dataset.shows === text) return;
  node.dataset.shows = text;
  put(node, mine.map((f) => card(f, answer)));
}

// card shows a finding, what stands under it, and a row for the changes that
// clear it, begun by first.
export function card(f, answer, under, first) {
  const node = el("div", { class: `finding ${f.level}` }, el("p", {}, badge(f.level), " ",
    many(answer) && f.drum ? el("b", {}, `${f.drum}: `) : null, `${capital(f.says)}.`));
  if (under) node.append(under);
  const row = el("div", { class: "fixes", "data-fix": nameOf(f) });
  if (first) row.append(first);
  node.append(row);
  return node;
}
