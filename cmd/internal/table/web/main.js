// The page: the steps of the work in their order, brought up to each answer.

import { $, drawing, el, put, say, words } from "./dom.js";
import { onDocument, redo, seal, undo } from "./doc.js";
import { onAnswer, rework } from "./work.js";
import * as fields from "./fields.js";
import * as files from "./files.js";
import * as paper from "./paper.js";
import * as compare from "./compare.js";
import * as wall from "./wall.js";
import { larger } from "./dialog.js";
import { marks, showFindings } from "./findings.js";
import { picture, values } from "./drum.js";
import { showPrices } from "./prices.js";
import "./cost.js";
import "./water.js";

let force = true; // the next answer may change what stands in a focused field

onDocument((why) => {
  if (why !== "change") force = true;
  if (why === "load") showPrices();
});

let kind = 0;
let shown = {};

onAnswer((answer, which) => {
  if (which !== "quick") return;
  fields.show(answer, force);
  force = false;
  values(answer);
  stillToMeasure(answer);
  showFindings(answer);
  marks(answer);
  $("old").hidden = !answer.error || !shown.section;
  document.documentElement.classList.toggle("stale", Boolean(answer.error));
  if (answer.name) {
    words($("job-name"), answer.name);
    document.title = `${answer.name} – drawing table`;
  }
  if (!answer.error) {
    const list = answer.drawings || [];
    kind = Math.min(kind, list.length - 1);
    kinds(list, answer);
    show(list[kind], answer);
  }
});

// kinds lets one choose which kind of drum the drawings show.
function kinds(list, answer) {
  const box = $("kinds");
  const text = list.map((k) => k.label).join("\n");
  if (box.dataset.shows === text) return;
  box.dataset.shows = text;
  put(box, list.length < 2 ? [] : el("div", { class: "field" }, el("label", { for: "kind" }, "Drawn for drum kind"),
    el("select", { id: "kind", onchange: (e) => {
      kind = Number(e.target.value);
      shown = {};
      show(list[kind], answer);
      rework();
    } }, list.map((k, i) => el("option", { value: i, selected: i === kind }, k.label)))));
}

function show(d, answer) {
  if (!d) return;
  for (const which of ["section", "lattice"]) {
    if (!d[which] || shown[which] === d[which]) continue;
    shown[which] = d[which];
    put($(`${which}-drawing`), drawing(d[which]));
  }
  wall.show(d, answer, kind);
}

function stillToMeasure(answer) {
  const due = (answer.fields || []).filter((f) => fields.missing(f, answer) && !/drum(\[\d+\])?\.outside$/.test(f.key) && !/\.(label|count)$/.test(f.key));
  const box = $("still");
  words(box, due.length ? `Still to measure: ${due.map((f) => fields.labelOf(f).toLowerCase()).join(", ")}.` : "");
  box.hidden = !due.length;
}

for (const b of document.querySelectorAll("[data-larger]")) {
  const names = { section: "The silo cut through", lattice: "The lattice, the foot seen from below" };
  b.setAttribute("aria-label", `Larger: ${names[b.dataset.larger]}`);
  b.addEventListener("click", () => {
    const svg = $(`${b.dataset.larger}-drawing`).querySelector("svg");
    if (svg) larger(names[b.dataset.larger], svg);
  });
}

$("undo").addEventListener("click", () => back(undo, "undone"));
$("redo").addEventListener("click", () => back(redo, "done again"));
$("save").addEventListener("click", () => files.save());
$("open").addEventListener("click", () => files.open());
$("new").addEventListener("click", () => files.fresh());

function back(f, what) {
  const tag = f();
  say(tag === null ? "nothing to take back" : `${what}: ${tag.replace(/[._[\]]+/g, " ")}`);
}

addEventListener("keydown", (e) => {
  if (!(e.ctrlKey || e.metaKey) || e.altKey) return;
  const key = e.key.toLowerCase();
  if (document.querySelector("dialog[open]") || e.target.closest?.(".price-form")) return;
  if (key === "z" && !e.shiftKey) { e.preventDefault(); back(undo, "undone"); }
  if (key === "y" || (key === "z" && e.shiftKey)) { e.preventDefault(); back(redo, "done again"); }
  if (key === "s") { e.preventDefault(); seal(); files.save(); }
  if (key === "p") {
    e.preventDefault();
    $("print").scrollIntoView();
    $("print-pack").focus();
    say("print the PDF, at actual size, 100 %, and measure the check square");
  }
});

// Sunlight: black on white, heavier lines, remembered.
const contrast = $("contrast");
function sunlight(on) {
  document.documentElement.classList.toggle("sunlight", on);
  contrast.setAttribute("aria-pressed", String(on));
  try { localStorage.setItem("silowright-sunlight", on ? "on" : "off"); } catch { /* for now only */ }
}
contrast.addEventListener("click", () => sunlight(contrast.getAttribute("aria-pressed") !== "true"));
let bright = matchMedia("(prefers-contrast: more)").matches;
try { bright = (localStorage.getItem("silowright-sunlight") || (bright ? "on" : "off")) === "on"; } catch { /* as it is */ }
sunlight(bright);

// The tape shows which step one is in.
const links = new Map([...document.querySelectorAll(".tape a")].map((a) => [a.hash.slice(1), a]));
const seen = new Map();
const watcher = new IntersectionObserver((list) => {
  for (const s of list) seen.set(s.target.id, s.intersectionRect.height);
  let best = null;
  for (const [id, tall] of seen) if (tall > (best ? seen.get(best) : 0)) best = id;
  for (const [id, a] of links) if (id === best) a.setAttribute("aria-current", "step"); else a.removeAttribute("aria-current");
}, { threshold: Array.from({ length: 21 }, (_, i) => i / 20) });
for (const s of document.querySelectorAll(".step")) watcher.observe(s);

picture();
paper.build();
compare.build();
files.begin();
