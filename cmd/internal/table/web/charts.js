// Two charts: what one silo costs at other sizes of build, and where the money
// goes. Each point can be pointed at or reached with Tab and the arrow keys,
// and each chart stands as a table as well.

import { $, draw, el, put, words } from "./dom.js";

const size = (p) => p.each;

// ticks are round steps that cover a range.
function ticks(low, high, n) {
  const rough = (high - low) / n || 1;
  const p = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((k) => k * p).find((s) => s >= rough) || p;
  const out = [];
  for (let t = Math.ceil(low / step) * step; t <= high + 1e-9; t += step) out.push(Math.round(t * 1e6) / 1e6);
  return out;
}

// curve draws the cost of one silo over the size of the build.
export function curve(costs) {
  const list = (costs.curve || []).filter((p) => Number.isFinite(size(p)));
  const box = $("curve");
  if (list.length < 2 || !list.some((p) => size(p) > 0)) return put(box); // nothing has a price yet
  const W = 560, H = 300, x0 = 58, x1 = W - 14, y0 = H - 44, y1 = 16;
  const says = (p) => `${p.n} ${p.n === 1 ? costs.counted.replace(/s$/, "") : costs.counted}: ${p.says} each${p.own ? ", this job" : ""}`;
  const maxN = list.at(-1).n, top = Math.max(...list.map((p) => size(p)));
  const low = 0;
  const X = (n) => x0 + (x1 - x0) * Math.sqrt((n - list[0].n) / (maxN - list[0].n || 1)); // small builds get room
  const Y = (v) => y0 - (y0 - y1) * (v - low) / (top * 1.05 - low);
  const readout = el("p", { class: "readout", "aria-live": "polite" }, "Point at the curve, or Tab to it and use the arrow keys.");
  const svg = draw("svg", { viewBox: `0 0 ${W} ${H}`, class: "chart", role: "group", "aria-label": `What one of the ${costs.counted} costs, by how many are built` });
  for (const t of ticks(low, top, 5)) svg.append(draw("path", { class: "grid", d: `M${x0} ${Y(t)}H${x1}` }), draw("text", { x: x0 - 6, y: Y(t) + 4, "text-anchor": "end", class: "tick" }, String(t)));
  const seen = [];
  for (const n of [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10000].filter((n) => n >= list[0].n && n <= maxN)) {
    if (seen.length && X(n) - X(seen.at(-1)) < 30) continue;
    seen.push(n);
    svg.append(draw("path", { class: "grid", d: `M${X(n)} ${y0}v5` }), draw("text", { x: X(n), y: y0 + 19, "text-anchor": "middle", class: "tick" }, String(n)));
  }
  svg.append(draw("path", { class: "axis", d: `M${x0} ${y1}V${y0}H${x1}` }),
    draw("text", { x: x1, y: H - 6, "text-anchor": "end", class: "tick" }, `${costs.counted} built`),
    draw("path", { class: "line", d: list.map((p, i) => `${i ? "L" : "M"}${X(p.n).toFixed(1)} ${Y(size(p)).toFixed(1)}`).join("") }));
  const points = list.map((p, i) => {
    const g = draw("g", { class: p.own ? "point own" : "point", role: "img", tabindex: i === 0 ? "0" : "-1", "aria-label": says(p) },
      draw("circle", { cx: X(p.n), cy: Y(size(p)), r: p.own ? 6 : 4 }));
    const tell = () => words(readout, says(p));
    g.addEventListener("focus", tell);
    g.addEventListener("pointerenter", tell);
    return g;
  });
  roam(points);
  svg.append(...points);
  svg.addEventListener("pointermove", (e) => {
    const b = svg.getBoundingClientRect();
    const x = (e.clientX - b.left) / b.width * W;
    let k = 0;
    list.forEach((p, i) => { if (Math.abs(X(p.n) - x) < Math.abs(X(list[k].n) - x)) k = i; });
    points.forEach((g, i) => g.classList.toggle("near", i === k));
    words(readout, says(list[k]));
  });
  put(box, el("figcaption", {}, `What one of the ${costs.counted} costs, by how many are built`), svg, readout,
    table("As a table", ["How many", "Each"], list.map((p) => [String(p.n), p.says])));
}

// roam lets the arrow keys walk along points of which one is in the tab order.
function roam(points) {
  points.forEach((g, i) => g.addEventListener("keydown", (e) => {
    const to = { ArrowRight: i + 1, ArrowUp: i + 1, ArrowLeft: i - 1, ArrowDown: i - 1, Home: 0, End: points.length - 1 }[e.key];
    if (to === undefined) return;
    e.preventDefault();
    const next = points[Math.max(0, Math.min(points.length - 1, to))];
    points.forEach((p) => p.setAttribute("tabindex", p === next ? "0" : "-1"));
    next.focus();
  }));
}

// part writes a share of one, to tenths of one per cent where it is asked for;
// what rounds to none is said to be less than one.
const part = (x, fine) => x > 0 && x < 0.0005 ? "under 0.1 %" : `${(x * 100).toFixed(fine ? 1 : 0)} %`;

// shares draws where the money goes, as bars.
export function shares(costs) {
  const parts = (costs.parts || []).filter((p) => p.share > 0);
  const box = $("shares");
  if (!parts.length) return put(box);
  const W = 560, row = 30, H = parts.length * row + 8, x0 = 190, x1 = W - 118;
  const most = Math.max(...parts.map((p) => p.share));
  const readout = el("p", { class: "readout", "aria-live": "polite" }, "Point at a bar, or Tab to it and use the arrow keys.");
  const svg = draw("svg", { viewBox: `0 0 ${W} ${H}`, class: "chart", role: "group", "aria-label": "Where the money goes" });
  const bars = parts.map((p, i) => {
    const y = 6 + i * row;
    const text = `${p.name}: ${p.sum}, ${part(p.share, p.share < 0.1)} of the whole`;
    const g = draw("g", { class: "bar", role: "img", tabindex: i === 0 ? "0" : "-1", "aria-label": text },
      draw("rect", { x: 0, y: y - 3, width: W, height: row - 2, class: "strip" }),
      draw("text", { x: x0 - 10, y: y + 15, "text-anchor": "end" }, p.name),
      draw("rect", { x: x0, y: y + 2, width: Math.max(1.5, (x1 - x0) * p.share / most), height: row - 12, class: "fill" }),
      draw("text", { x: x0 + (x1 - x0) * p.share / most + 8, y: y + 15, class: "tick" }, p.sum));
    const tell = () => {
      words(readout, text);
      bars.forEach((b) => b.classList.toggle("near", b === g));
    };
    g.addEventListener("focus", tell);
    g.addEventListener("pointerenter", tell);
    return g;
  });
  roam(bars);
  svg.append(...bars);
  put(box, el("figcaption", {}, "Where the money goes"), svg, readout,
    table("As a table", ["Part", "Sum", "Share"], parts.map((p) => [p.name, p.sum, part(p.share, true)])));
}

function table(title, head, rows) {
  return el("details", { class: "more" }, el("summary", {}, title), el("table", { class: "list" },
    el("thead", {}, el("tr", {}, head.map((h) => el("th", { scope: "col" }, h)))),
    el("tbody", {}, rows.map((r) => el("tr", {}, r.map((c, i) => el(i ? "td" : "th", i ? {} : { scope: "row" }, c)))))));
}
