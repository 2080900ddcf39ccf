// The document: the job's text and the price list's text, with what was before
// and after. The texts are all there is; everything shown comes from them.

import { beacon, post } from "./ask.js";

const inTab = "silowright-tab"; // survives a reload, is this tab's own
const inBrowser = "silowright-unsaved"; // a job that has no file yet
const deep = 200; // steps that can be undone
const stored = 40; // of them kept over a reload

export const doc = {
  job: "", prices: "", path: "", pricesPath: "", revision: "",
  saved: { job: "", prices: "" },
  past: [], future: [],
  example: false,
};

const listeners = [];
export const onDocument = (f) => listeners.push(f);
const tell = (why) => listeners.forEach((f) => f(why));

let run = 0; // changes of one run, under one tag, are one step

// seal ends a run of changes that one undo takes back.
export const seal = () => { run++; };

// tagged marks a tag with the run it was made in, for a change that is
// answered when the run may be over.
export const tagged = (tag) => `${tag}\u0000${run}`;

// change sets new texts. Changes with the same tag, of one run, are one step.
export function change(job, prices, tag) {
  if (job === doc.job && prices === doc.prices) return false;
  if (!tag.includes("\u0000")) tag = tagged(tag);
  const last = doc.past.at(-1);
  if (!last || last.tag !== tag) {
    doc.past.push({ job: doc.job, prices: doc.prices, tag });
    if (doc.past.length > deep) doc.past.shift();
  }
  doc.future = [];
  doc.job = job;
  doc.prices = prices;
  doc.example = false;
  keep();
  tell("change");
  return true;
}

function step(from, to) {
  const s = from.pop();
  if (!s) return null;
  to.push({ job: doc.job, prices: doc.prices, tag: s.tag });
  doc.job = s.job;
  doc.prices = s.prices;
  seal();
  keep();
  tell("step");
  return (s.tag || "").split("\u0000")[0];
}

export const undo = () => step(doc.past, doc.future);
export const redo = () => step(doc.future, doc.past);
export const unsaved = () => doc.job !== doc.saved.job || doc.prices !== doc.saved.prices;

// load takes a document up afresh.
export function load(d) {
  Object.assign(doc, { path: "", pricesPath: "", revision: "", example: false, past: [], future: [] }, d);
  doc.saved = d.saved || { job: doc.job, prices: doc.prices };
  seal();
  keep();
  tell("load");
}

// wrote notes that the server has the texts under a revision.
export function wrote(path, revision, job, prices) {
  Object.assign(doc, { path, revision, saved: { job, prices }, example: false });
  localStorage.removeItem(inBrowser);
  keep();
  tell("saved");
}

function shelf(place, key, value) {
  try { place.setItem(key, JSON.stringify(value)); } catch { /* full or forbidden: the draft on disk remains */ }
}

// keep puts the document where a reload or a crash cannot reach it.
let draftTimer, drafting = Promise.resolve();
export function keep() {
  const state = { ...doc, past: doc.past.slice(-stored), future: doc.future.slice(-stored) };
  shelf(sessionStorage, inTab, state);
  if (!doc.path && !doc.example) shelf(localStorage, inBrowser, { job: doc.job, prices: doc.prices });
  clearTimeout(draftTimer);
  if (doc.path && unsaved()) draftTimer = setTimeout(draft, 800);
}

function sheet() {
  return { path: doc.path, job: doc.job, prices: doc.prices, revision: doc.revision };
}

function draft() {
  draftTimer = undefined;
  drafting = post("/api/draft", sheet()).catch(() => { /* the tab's own copy remains */ });
}

// rested ends the writing of drafts before a save: one still on its way would
// come after the save, and be found later as unsaved work.
export function rested() {
  clearTimeout(draftTimer);
  draftTimer = undefined;
  return drafting;
}

addEventListener("pagehide", () => {
  if (draftTimer !== undefined && doc.path && unsaved()) beacon("/api/draft", sheet());
});

function read(place, key) {
  try {
    const s = JSON.parse(place.getItem(key));
    return s && typeof s.job === "string" && typeof s.prices === "string" ? s : null;
  } catch { return null; }
}

// kept is what this tab held before a reload.
export const kept = () => read(sessionStorage, inTab);
// homeless is a job begun in this browser that has no file.
export const homeless = () => read(localStorage, inBrowser);
export const forgetHomeless = () => localStorage.removeItem(inBrowser);
