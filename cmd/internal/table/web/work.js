// Changes go to the server one at a time; what is typed meanwhile is gathered
// and sent together. Drawings and findings come first, money and water a
// moment later, so that the hand never waits for them.

import { doc, change, onDocument, tagged } from "./doc.js";
import { post } from "./ask.js";
import { note } from "./dom.js";

const listeners = [];
export const onAnswer = (f) => listeners.push(f);

// last is the newest answer, and what of an older one still stands.
export const last = { answer: null, sum: null, stale: false };

let waiting = null; // edits not sent yet
let flying = false;
let round = 0; // answers to older rounds are thrown away
let slowTimer;
let began = 0;

// edit changes keys of the job. Changes under one tag are undone together.
export function edit(edits, tag) {
  if (!waiting) waiting = { edits: new Map(), tag };
  waiting.tag = tagged(tag);
  for (const e of edits) waiting.edits.set(e.key, e.value);
  if (!began) began = performance.now();
  fly();
}

// rework asks anew about the texts as they are.
export function rework() {
  round++;
  waiting = waiting || { edits: new Map(), tag: "" };
  if (!began) began = performance.now();
  fly();
}

onDocument((why) => {
  if (why === "step" || why === "load") {
    waiting = null;
    rework();
  }
});

export const settled = () => !flying && !waiting;

// state is written on the page's root, for tests and for style.
function state(counting) {
  const root = document.documentElement;
  root.toggleAttribute("data-working", !settled());
  if (counting !== undefined) root.toggleAttribute("data-counting", counting);
}

// idle resolves when every change has been answered.
export function idle() {
  return new Promise((done) => {
    const look = () => settled() ? done() : setTimeout(look, 10);
    look();
  });
}

async function fly() {
  state();
  if (flying || !waiting) return;
  flying = true;
  const mine = waiting, turn = round, start = began;
  waiting = null;
  began = 0;
  clearTimeout(slowTimer);
  const edits = [...mine.edits].map(([key, value]) => ({ key, value }));
  try {
    const answer = await post("/api/work", { path: doc.path, job: doc.job, prices: doc.prices, edits, want: ["draw"] });
    if (turn === round) {
      // the reply is to the texts sent, so only edits can make them differ
      if (edits.length) change(answer.job, doc.prices, mine.tag);
      hand(answer, start);
      state(true);
      slowTimer = setTimeout(slow, 120);
    }
  } catch (cause) {
    note(cause.message, true);
    if (turn === round && edits.length) { // nothing typed is dropped
      const newer = waiting ? waiting.edits : new Map();
      waiting = { edits: new Map([...mine.edits, ...newer]), tag: mine.tag };
      setTimeout(() => { flying = false; fly(); }, 1500);
      return;
    }
  }
  flying = false;
  fly();
}

function hand(answer, start) {
  last.answer = answer;
  last.stale = Boolean(answer.error);
  listeners.forEach((f) => f(answer, "quick"));
  if (!start) return;
  requestAnimationFrame(() => {
    // a task after the frame: what was laid out has been painted
    setTimeout(() => { document.documentElement.dataset.redraw = (performance.now() - start).toFixed(1); });
  });
}

let abort = null;
async function slow() {
  if (last.answer && last.answer.error) return state(false);
  const turn = round, job = doc.job, prices = doc.prices;
  if (abort) abort.abort();
  abort = new AbortController();
  try {
    const answer = await post("/api/work", { path: doc.path, job, prices, edits: [], want: ["cost", "water"] }, abort.signal);
    if (turn !== round || job !== doc.job || prices !== doc.prices) return;
    last.sum = answer;
    listeners.forEach((f) => f(answer, "slow"));
    state(false);
  } catch (cause) {
    if (cause.name !== "AbortError") note(cause.message, true);
  }
}
