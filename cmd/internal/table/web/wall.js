// The wall laid flat, with its holes and slots to be moved: by hand, snapping,
// or with the arrow keys. The drawing under it is the server's own.

import { $, draw, drawing, el, put, say, words } from "./dom.js";
import { edit, idle, last } from "./work.js";
import { current } from "./fields.js";
import { seal } from "./doc.js";
import { both, step, written } from "./lengths.js";

const walls = new Map(); // id → what is shown of it
let dragging = null;

// show brings the walls of one kind of drum up to an answer.
export function show(d, answer, kind) {
  const list = wallsOf(d, answer, kind);
  const box = $("walls");
  const names = list.map((w) => w.id).join("|");
  if (box.dataset.shows !== names) {
    box.dataset.shows = names;
    walls.clear();
    put(box, list.map((w) => {
      const v = new Wall(w);
      walls.set(w.id, v);
      return v.node;
    }));
  }
  for (const w of list) walls.get(w.id).update(w, answer.units || "in");
}

// wallsOf pairs each wall of a kind with its drawing, and its keys with those
// that are this drum's own.
function wallsOf(d, answer, kind) {
  const own = answer.drums?.[kind]?.path;
  const here = (key) => own && current(`${own}.${key}`) ? `${own}.${key}` : key;
  return (answer.wall || []).filter((w) => w.label === d.label).map((w) => ({
    ...w, id: `${d.label}-${w.part}`, svg: d[w.drawing],
    parts: w.parts.map((p) => ({ ...p, keys: { x: p.keys.x && here(p.keys.x), y: p.keys.y && here(p.keys.y) } })),
  }));
}

const titles = { body: "The body's wall laid flat", base: "The base's wall laid flat, mouth up" };

// The wall that a field is about comes first, so that it is in sight.
addEventListener("focusin", (e) => {
  const key = e.target.closest?.("#holes-fields [data-key]")?.dataset.key;
  if (key) $("walls").classList.toggle("base-first", /(^|\.)(inlet|drain)\./.test(key));
});

class Wall {
  constructor(w) {
    this.parts = new Map();
    this.paper = el("div", { class: "wall-paper" });
    this.over = draw("svg", { class: "over", role: "application", "aria-label": "Holes and slots to move" });
    this.reading = el("p", { class: "reading" });
    this.gaps = el("ul", { class: "gaps", "aria-label": "Distances between the openings" });
    const help = `help-${w.id.replace(/[^A-Za-z0-9]+/g, "-")}`;
    this.help = help;
    this.node = el("figure", { class: "wall", "data-part": w.part },
      el("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": titles[w.part] }, el("div", { class: "paper sheet" }, this.paper, this.over)),
      el("figcaption", {}, titles[w.part]),
      el("p", { class: "means", id: help }, "Drag a hole or slot, or Tab to it and use the arrow keys; with Shift they go in finer steps. It catches on the datum and opposite to it."),
      this.reading, this.gaps);
  }

  update(w, units) {
    this.w = w;
    this.units = units;
    if (w.svg && w.svg !== this.svg) {
      this.svg = w.svg;
      const svg = drawing(w.svg);
      this.over.setAttribute("viewBox", svg.getAttribute("viewBox"));
      put(this.paper, svg);
    }
    for (const p of w.parts) this.place(p);
    for (const [id, g] of this.parts) if (!w.parts.some((p) => p.id === id)) { g.remove(); this.parts.delete(id); }
    this.clearances(w);
    if (this.moved) this.tell();
  }

  // place puts the handle of one opening where the drawing has it.
  place(p) {
    let g = this.parts.get(p.id);
    if (!g) {
      g = draw("g", { class: "grip", "data-part": p.id });
      g.append(draw("rect", { class: "reach" }), draw("rect", { class: "ring" }));
      if (movable(p)) {
        for (const [k, v] of Object.entries({ tabindex: "0", role: "button", "aria-roledescription": "movable opening", "aria-describedby": this.help })) g.setAttribute(k, v);
        this.listen(g, p.id);
      } else g.classList.add("fixed");
      this.over.append(g);
      this.parts.set(p.id, g);
    }
    g.setAttribute("aria-label", `${p.name || p.id.replaceAll("_", " ")}, ${this.position(p)}`);
    if (dragging?.g === g) return;
    this.set(g, p, p.x_mm, p.y_mm);
  }

  set(g, p, x, y) {
    const f = this.w.frame, k = f.scale, c = this.w.circumference_mm;
    let at = ((x % c) + c) % c;
    if (at >= c - f.lead_mm) at -= c; // the wall is parted left of the datum
    const cx = f.x_mm + at * k, cy = f.y_mm - y * k, w = p.w_mm * k, h = p.h_mm * k;
    const [reach, ring] = g.children;
    const pad = Math.max(2, (9 - Math.min(w, h)) / 2);
    for (const [r, more] of [[reach, pad], [ring, 1]]) {
      r.setAttribute("x", cx - w / 2 - more);
      r.setAttribute("y", cy - h / 2 - more);
      r.setAttribute("width", w + 2 * more);
      r.setAttribute("height", h + 2 * more);
      r.setAttribute("rx", (h + 2 * more) / 2);
    }
  }

  listen(g, id) {
    const part = () => this.w.parts.find((p) => p.id === id);
    g.addEventListener("pointerdown", (e) => {
      if (e.button) return;
      e.preventDefault();
      g.focus();
      g.setPointerCapture(e.pointerId);
      const p = part();
      seal();
      dragging = { g, id, from: this.point(e), x: p.x_mm, y: p.y_mm, start: { ...p } };
      g.classList.add("held");
    });
    g.addEventListener("pointermove", (e) => {
      if (dragging?.g !== g) return;
      const to = this.point(e), k = this.w.frame.scale;
      const s = step(this.units, e.shiftKey);
      const x = this.catchX(snap(dragging.x + (to.x - dragging.from.x) / k, s), s, k);
      const y = snapY(dragging.start, this.w, dragging.y - (to.y - dragging.from.y) / k, s);
      this.move(dragging.start, x, y, g);
    });
    const drop = () => {
      if (dragging?.g !== g) return;
      dragging = null;
      g.classList.remove("held");
      seal();
      idle().then(() => {
        const p = part();
        if (p) this.set(g, p, p.x_mm, p.y_mm);
        this.speak(id);
      });
    };
    g.addEventListener("pointerup", drop);
    g.addEventListener("pointercancel", drop);
    g.addEventListener("keydown", async (e) => {
      const [dx, dy] = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[e.key] || [0, 0];
      if (!dx && !dy) return;
      e.preventDefault();
      await idle(); // each press starts from where the last one ended
      const p = part();
      if (!p) return;
      const s = step(this.units, e.shiftKey);
      const x = dx ? nudge(p.x_mm, dx, s) : p.x_mm, y = dy ? nudgeY(p, this.w, dy, s) : p.y_mm;
      this.move(p, x, y, g);
      await idle();
      this.speak(id);
    });
    g.addEventListener("blur", () => { seal(); this.moved = ""; });
    g.addEventListener("focus", () => { this.moved = id; this.tell(); });
  }

  point(e) {
    const m = this.over.getScreenCTM().inverse();
    return new DOMPoint(e.clientX, e.clientY).matrixTransform(m);
  }

  // catchX holds a hole at the datum, or opposite to it, when it comes near.
  catchX(x, s, k) {
    const c = this.w.circumference_mm, near = Math.max(s * 1.5, 2.5 / k);
    const r = ((x % c) + c) % c;
    if (Math.min(r, c - r) < near) return 0;
    if (Math.abs(r - c / 2) < near) return c / 2;
    return x;
  }

  move(p, x, y, g) {
    const c = this.w.circumference_mm;
    let r = ((x % c) + c) % c;
    if (c - r < 0.05) r = 0;
    const edits = [];
    const turned = ((r - p.x_offset_mm) % c + c) % c; // the second slot stands opposite the first
    if (p.keys.x && (Math.abs(r - ((p.x_mm % c) + c) % c) > 0.01 || dragging)) edits.push({ key: p.keys.x, value: written(c - turned < 0.05 ? 0 : turned, this.units) });
    if (p.keys.y && (Math.abs(y - p.y_mm) > 0.01 || dragging)) edits.push({ key: p.keys.y, value: written(yValue(p, this.w, y), this.units) });
    if (dragging) {
      const now = JSON.stringify(edits);
      this.set(g, p, x, y);
      if (dragging.sent === now) return;
      dragging.sent = now;
    }
    this.moved = p.id;
    if (edits.length) edit(edits, `move ${p.id}`);
  }

  position(p) {
    const c = this.w.circumference_mm;
    const r = ((p.x_mm % c) + c) % c;
    const round = r < 0.05 || c - r < 0.05 ? "on the datum" : Math.abs(r - c / 2) < 1 ? "opposite the datum" : `${both(r, this.units)} to the right of the datum`;
    return `${round}, ${both(yValue(p, this.w, p.y_mm), this.units)} ${p.y_from === "rim" ? "below the rim" : "above the ground"}`;
  }

  mine(id) {
    const name = id.replace(/-2$/, "");
    return (this.w.clearances || []).filter((g) => `${g.a} ${g.b}`.includes(name));
  }

  gap(g) {
    const mark = { stop: "✕ too near", caution: "! near", ok: "✓" }[g.level] ?? "";
    return `${g.a} – ${g.b}: ${g.both}${g.least_mm ? `, at least ${both(g.least_mm, this.units)}` : ""} ${mark}`.trim();
  }

  called(id) { return this.w.parts.find((p) => p.id === id)?.name || id.replaceAll("_", " "); }

  clearances(w) {
    const nearest = [...(w.clearances || [])].sort((a, b) => a.mm - b.mm).slice(0, 6);
    const list = this.moved ? this.mine(this.moved) : nearest;
    const text = list.map((g) => this.gap(g));
    if (this.gapsText === text.join("\n")) return;
    this.gapsText = text.join("\n");
    put(this.gaps, list.map((g, i) => el("li", { class: g.level }, text[i])));
  }

  tell() {
    const p = this.w.parts.find((q) => q.id === this.moved);
    words(this.reading, p ? `${this.called(p.id)}: ${this.position(p)}` : "");
  }

  speak(id) {
    const p = this.w.parts.find((q) => q.id === id);
    if (!p) return;
    if (last.stale) return say(`${this.called(id)} cannot go there: ${last.answer.error.why || last.answer.error.text}`);
    this.tell();
    say(`${this.called(id)}, ${this.position(p)}. ${this.mine(id).sort((a, b) => a.mm - b.mm).slice(0, 3).map((g) => this.gap(g)).join("; ")}`);
  }
}

const movable = (p) => Boolean(p.keys && (p.keys.x || p.keys.y));
const snap = (v, s) => Math.round(v / s) * s;

// nudge goes to the next whole step, so that odd places come onto the grid.
function nudge(v, way, s) {
  const n = v / s, near = Math.round(n);
  return (Math.abs(n - near) < 0.02 ? near + way : way > 0 ? Math.ceil(n) : Math.floor(n)) * s;
}

// yValue is what the job file says of an opening's height: from the rim down,
// of a slot to its upper edge, or from the ground up.
function yValue(p, w, y) {
  if (p.y_from !== "rim") return y;
  return w.height_mm - y - (p.y_edge === "top" ? p.h_mm / 2 : 0);
}

const yOf = (p, w, value) => p.y_from !== "rim" ? value : w.height_mm - value - (p.y_edge === "top" ? p.h_mm / 2 : 0);
const snapY = (p, w, y, s) => yOf(p, w, snap(yValue(p, w, y), s));
const nudgeY = (p, w, way, s) => yOf(p, w, nudge(yValue(p, w, p.y_mm), p.y_from === "rim" ? -way : way, s));
