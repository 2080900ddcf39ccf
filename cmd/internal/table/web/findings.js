// The findings: all of them in step 3, and everywhere the changes that would
// clear them as buttons.

import { $, el, put, words, say, capital } from "./dom.js";
import { doc, seal } from "./doc.js";
import { post } from "./ask.js";
import { edit, last, onAnswer } from "./work.js";
import { bare, fieldLabel, go } from "./fields.js";
import { badge, card, many, nameOf, troubles } from "./card.js";

let fixes = new Map(); // finding → changes, for the texts as they are
let fixesFor = "";

// errorWords says in a sentence what keeps the job from being worked out.
export function errorWords(e) {
  const name = fieldLabel(e.field) || e.key;
  if (name && /missing/.test(e.why)) return `${name} is still to be given.`;
  return `${[name, [e.value && `“${e.value.replace(/^"|"$/g, "")}”`, e.why || e.text].filter(Boolean).join(" ")].filter(Boolean).join(": ")}.`;
}

// goTo is the button that leads to the field of a finding, where it has one.
const goTo = (key) => key && el("button", { type: "button", class: "quiet", onclick: () => { if (!go(key)) say("that field is not on this page"); } }, `Go to ${keyWords(key)}`);

function keyWords(key) {
  const parts = bare(key).split(".");
  return parts.map((p) => p.replaceAll("_", " ")).join(", ");
}

const basis = (f) => [f.measured && `Measured ${f.measured}`, f.limit && `limit ${f.limit}`].filter(Boolean).join(", ") + (f.basis ? `. Basis: ${f.basis}` : "") + ".";

// showFindings fills step 3.
export function showFindings(answer) {
  if (answer.error) {
    const e = answer.error;
    words($("tally"), `Nothing is checked yet: ${errorWords(e)}`);
    put($("finding-list"), e.field ? el("button", { type: "button", class: "quiet", onclick: () => go(e.field) }, "Go to that entry") : null);
    return;
  }
  const list = answer.findings || [];
  const of = (level) => list.filter((f) => f.level === level);
  const stops = of("stop"), cautions = of("caution"), ok = of("ok");
  words($("tally"), stops.length
    ? `Do not cut yet: ${count(stops.length, "stop")}, ${count(cautions.length, "caution")}, ${count(ok.length, "check")} ${ok.length === 1 ? "holds" : "hold"}.`
    : cautions.length ? `Ready to cut, with care: no stop, ${count(cautions.length, "caution")}, ${count(ok.length, "check")} ${ok.length === 1 ? "holds" : "hold"}.`
      : `All ${count(ok.length, "check")} hold.`);
  const open = $("finding-list").querySelector("details")?.open;
  put($("finding-list"),
    [...stops, ...cautions].map((f) => card(f, answer, el("p", { class: "basis" }, basis(f)), goTo(f.field))),
    ok.length ? el("details", { class: "holds", open: Boolean(open) }, el("summary", {}, `${count(ok.length, "check")} that ${ok.length === 1 ? "holds" : "hold"}`),
      el("ul", {}, ok.map((f) => el("li", {}, badge("ok"), ` ${many(answer) && f.drum ? f.drum + ": " : ""}${capital(f.says)}.`, el("span", { class: "basis" }, ` ${basis(f)}`))))) : null);
}

const count = (n, word) => `${n === 0 ? "no" : n} ${word}${n === 1 ? "" : "s"}`;

// Changes that clear a finding are asked for when the hand rests.
let timer;
let abort;
onAnswer((answer, which) => {
  if (which !== "quick") return;
  clearTimeout(timer);
  if (abort) abort.abort();
  if (answer.error) return;
  if (fixesFor === doc.job + doc.prices) return place();
  fixes = new Map();
  fixesFor = doc.job + doc.prices;
  timer = setTimeout(() => gather(troubles(answer)), 350);
});

async function gather(list) {
  abort = new AbortController();
  const { signal } = abort;
  const job = doc.job, prices = doc.prices;
  for (const f of list.filter((x) => x.fixes).sort((a, b) => (a.level === "stop" ? 0 : 1) - (b.level === "stop" ? 0 : 1))) {
    try {
      const got = await post("/api/fixes", { path: doc.path, job, prices, id: f.id, drum: f.drum || "" }, signal);
      if (job !== doc.job) return;
      fixes.set(nameOf(f), got.fixes || []);
      place();
    } catch (cause) {
      if (cause.name === "AbortError") return;
    }
  }
  document.documentElement.dataset.fixes = "done";
}

function place() {
  for (const row of document.querySelectorAll("[data-fix]")) {
    if (row.dataset.filled || !fixes.has(row.dataset.fix)) continue;
    row.dataset.filled = "yes";
    row.prepend(...fixes.get(row.dataset.fix).map((x) => el("button", { type: "button", class: "fix", onclick: () => use(x) }, capital(x.label))));
  }
}

function use(x) {
  seal();
  edit([{ key: x.key, value: x.value }], `fix ${x.key}`);
  seal();
  say(`done: ${x.label}`);
  go(x.key);
}

// The marks on the tape: how many stops and cautions a step has.
export function marks(answer) {
  const open = troubles(answer);
  for (const mark of document.querySelectorAll("[data-mark]")) {
    const step = document.getElementById(mark.dataset.mark);
    let stops = step.querySelectorAll(".field .finding.stop, .wrong:not([hidden])").length;
    let cautions = step.querySelectorAll(".field .finding.caution").length;
    if (mark.dataset.mark === "findings") {
      stops = open.filter((f) => f.level === "stop").length;
      cautions = open.length - stops;
    }
    mark.className = stops ? "stop" : cautions ? "caution" : "";
    words(mark, stops ? `✕ ${stops}` : cautions ? `! ${cautions}` : "");
    if (stops || cautions) mark.setAttribute("aria-label", [stops && count(stops, "stop"), cautions && count(cautions, "caution")].filter(Boolean).join(", "));
    else mark.removeAttribute("aria-label");
    mark.setAttribute("role", "img");
    mark.hidden = !stops && !cautions;
  }
}

export const stops = () => troubles(last.answer).filter((f) => f.level === "stop");
