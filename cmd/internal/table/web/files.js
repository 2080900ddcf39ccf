// Opening, saving, beginning anew, and what happens when two hands save one
// job: nothing is written over unseen.

import { $, el, put, note, say, words } from "./dom.js";
import { ask } from "./dialog.js";
import { get, post, Refusal } from "./ask.js";
import { doc, forgetHomeless, homeless, keep, kept, load, onDocument, rested, unsaved, wrote } from "./doc.js";
import { idle } from "./work.js";

let files = [];

const at = (job) => job ? `/api/open?job=${encodeURIComponent(job)}` : "/api/open";

// begin takes up what this tab held, else what the server gives.
export async function begin() {
  const mine = kept();
  const named = new URLSearchParams(location.search).get("job") || "";
  let served = null;
  try {
    served = await get(at(named || mine?.path || ""));
    files = served.files || [];
  } catch (cause) {
    if (!mine) { note(cause.message, true); return; }
  }
  if (mine && (!named || mine.path === named)) {
    load(mine);
    Object.assign(doc, { past: mine.past || [], future: mine.future || [], saved: mine.saved || { job: mine.job, prices: mine.prices } });
    buttons();
    if (doc.example) banner();
    if (served && doc.path && served.revision !== doc.revision) note("The file has been saved elsewhere since. Saving will ask what to do.");
    return;
  }
  const lost = !served.path && homeless();
  if (lost) {
    load({ ...lost });
    welcome("You were in the middle of this job, and it has no file yet.", [
      ["Carry on", () => hide()], ["Begin a new job", () => fresh()],
    ]);
    return;
  }
  await take(served);
}

async function take(served) {
  files = served.files || files;
  const example = !served.path;
  load({ job: served.job, prices: served.prices, path: served.path || "", pricesPath: served.pricesPath || "", revision: served.revision || "", example });
  hide();
  if (example) banner();
  const draft = served.draft;
  if (draft && (draft.job !== served.job || draft.prices !== served.prices)) {
    const choice = await ask("Unsaved work was found", "The table stopped, or the tab was closed, before this job was saved. The unsaved work is newer than the file.",
      [{ value: "draft", label: "Take the unsaved work" }, { value: "file", label: "Keep to the file" }]);
    if (choice === "draft") {
      load({ ...doc, job: draft.job, prices: draft.prices, saved: { job: served.job, prices: served.prices } });
      say("the unsaved work is back");
    }
  }
}

function banner() {
  welcome("This is an invented example, to look around in. Nothing you do to it can do harm.", [
    ["Begin with my own drum", () => fresh()],
    ["Look around first", () => hide()],
  ]);
}

function welcome(text, answers) {
  const box = $("banner");
  put(box, el("p", {}, text), el("div", { class: "buttons" }, answers.map(([label, f], i) => el("button", { type: "button", class: i ? "quiet" : null, onclick: f }, label))));
  box.hidden = false;
}

function hide() { $("banner").hidden = true; }

// The least a job file says before anything is measured.
function blank(units, name) {
  const quoted = JSON.stringify(name);
  const currency = units === "mm" ? "EUR" : "USD";
  return `# Job file of silowright, begun at the drawing table.\n\nname       = ${quoted}\nunits      = "${units}"\ndrum_silos = 1\npipe_silos = 0\ncurrency   = "${currency}"\n\n[[drum]]\nlabel = "A"\nhoops = [{}, {}]\n\n[prices]\nfile = "prices.csv"\n`;
}

export async function fresh() {
  if (unsaved() && !doc.example && !await sure()) return;
  const name = el("input", { id: "new-name", type: "text", value: "My silos", maxlength: 60, autocomplete: "off" });
  const units = el("select", { id: "new-units" }, el("option", { value: "in" }, "inches"), el("option", { value: "mm" }, "millimetres"));
  const answer = await ask("A new job", el("div", {},
    el("div", { class: "field" }, el("label", { for: "new-name" }, "What is it called?"), name),
    el("div", { class: "field" }, el("label", { for: "new-units" }, "Your tape reads in"), units)),
  [{ value: "go", label: "Begin" }], () => ({ name: name.value.trim() || "My silos", units: units.value }));
  if (!answer) return;
  forgetHomeless();
  load({ job: blank(answer.units, answer.name), prices: "item,description,pack,unit,width,form,from,price,supplier,quoted\n", saved: { job: "", prices: "" } });
  hide();
  await idle();
  document.querySelector('#measure-fields [data-key*="circumference"] input, #measure-fields [data-key^="drum"] input')?.focus();
}

async function sure() {
  return await ask("Leave this job unsaved?", "What you changed is not saved. Going on lets go of it.", [{ value: "go", label: "Go on without saving" }]) === "go";
}

export async function open() {
  if (unsaved() && !doc.example && !await sure()) return;
  let list;
  try { list = (await get("/api/open")).files || []; } catch (cause) { note(cause.message, true); return; }
  files = list;
  if (!list.length) { note("No job file in this folder yet. Save this one first."); return; }
  const pick = el("select", { id: "open-which", size: Math.min(8, Math.max(2, list.length)) }, list.map((f, i) => el("option", { value: f, selected: i === 0 }, f)));
  const path = await ask("Open a job", el("div", { class: "field" }, el("label", { for: "open-which" }, "Job files in this folder"), pick),
    [{ value: "open", label: "Open" }], () => pick.value);
  if (!path) return;
  try { await take(await get(at(path))); } catch (cause) { note(cause.message, true); }
}

async function named(title, path) {
  const input = el("input", { id: "save-path", type: "text", value: path, maxlength: 200, autocomplete: "off", spellcheck: "false", autocapitalize: "off" });
  return ask(title, el("div", { class: "field" }, el("label", { for: "save-path" }, "File name, in the folder the table was started in"), input),
    [{ value: "save", label: "Save" }], () => input.value.trim());
}

const fileName = (text) => `${(/^name\s*=\s*"([^"]*)"/m.exec(text)?.[1] || "job").toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-|-$/g, "") || "job"}.toml`;

export async function save() {
  await idle();
  let path = doc.path;
  if (!path) path = await named("Save the job", fileName(doc.job));
  if (!path) return;
  if (!path.endsWith(".toml")) path += ".toml";
  await write(path, path === doc.path ? doc.revision : "");
}

async function write(path, revision) {
  await rested();
  const { job, prices } = doc;
  try {
    const got = await post("/api/save", { path, job, prices, revision });
    wrote(path, got.revision, job, prices);
    note(`Saved as ${path}.`);
  } catch (cause) {
    keep();
    if (cause instanceof Refusal && cause.status === 409) return clash(path, cause.answer);
    note(cause.message, true);
  }
}

// clash asks what to do when the file changed since it was opened.
async function clash(path, theirs) {
  const other = theirs.theirs || {};
  const text = typeof other === "string" ? other : other.job ?? "";
  const diff = differing(doc.job, text);
  const choice = await ask("Saved elsewhere meanwhile", el("div", {},
    el("p", {}, `${path} was saved from another tab or program after this tab opened it. Nothing has been written over.`),
    el("table", { class: "list" }, el("caption", {}, diff.length ? "Where the two differ" : "The jobs read the same; the price lists differ"),
      el("thead", {}, el("tr", {}, el("th", { scope: "col" }, "Mine"), el("th", { scope: "col" }, "Theirs"))),
      el("tbody", {}, diff.slice(0, 12).map(([a, b]) => el("tr", {}, el("td", {}, a || "–"), el("td", {}, b || "–")))))),
  [{ value: "mine", label: "Keep mine" }, { value: "theirs", label: "Take theirs" }, { value: "other", label: "Save mine under another name" }]);
  if (choice === "mine") await write(path, theirs.revision);
  if (choice === "theirs") {
    try { await take(await get(at(path))); note("Theirs is on the table now."); } catch (cause) { note(cause.message, true); }
  }
  if (choice === "other") {
    const name = await named("Save mine under another name", path.replace(/\.toml$/, "-mine.toml"));
    if (name) await write(name.endsWith(".toml") ? name : `${name}.toml`, "");
  }
}

// differing pairs the lines in which two texts are not alike.
function differing(a, b) {
  const key = (l) => l.split("=")[0].trim();
  const A = a.split("\n"), B = b.split("\n");
  const setA = new Set(A), setB = new Set(B);
  const onlyA = A.filter((l) => l.trim() && !setB.has(l)), onlyB = B.filter((l) => l.trim() && !setA.has(l));
  const out = onlyA.map((l) => {
    const i = onlyB.findIndex((m) => key(m) === key(l));
    return [l.trim(), i < 0 ? "" : onlyB.splice(i, 1)[0].trim()];
  });
  return [...out, ...onlyB.map((l) => ["", l.trim()])];
}

export function buttons() {
  $("undo").disabled = !doc.past.length;
  $("redo").disabled = !doc.future.length;
  $("save").classList.toggle("due", unsaved());
  const state = doc.example ? "an invented example, no file yet" : doc.path ? `${doc.path}${unsaved() ? ", changed since it was saved" : ", saved"}` : "no file yet; kept in this browser";
  words($("where"), state);
}

onDocument(buttons);
export const jobFiles = () => files;
