// The fields: one for each key of the job, in the step where it is asked for,
// with both units, what is wrong with it and what the checks found.

import { el, put, human, capital, words } from "./dom.js";
import { edit, last } from "./work.js";
import { seal } from "./doc.js";
import { beside } from "./card.js";

// The groups of each step: title, the keys or sections it takes, whether it
// stands open. What no group names goes to the last of its step.
const groups = {
  measure: [
    { id: "job", title: "The job", keys: ["name", "units", "drum_silos", "pipe_silos"], open: true },
    { id: "drum", title: "The drum", drum: true, open: true },
  ],
  holes: [
    { id: "outlet", title: "Outlet", sections: ["outlet"], open: true },
    { id: "inlet", title: "Inlet", sections: ["inlet"], open: true },
    { id: "drain", title: "Drain", sections: ["drain"], open: true },
    { id: "handle", title: "Handle slots", sections: ["handle"], open: true },
    { id: "mesh", title: "Mesh", sections: ["mesh"], open: true },
    { id: "lattice", title: "Lattice under the mesh", sections: ["lattice"] },
    { id: "ring", title: "Retaining ring and its screws", sections: ["ring", "screws", "sealant"] },
    { id: "pipe", title: "Pipe silos", sections: ["pipe_silo"] },
    { id: "saw", title: "How your saws cut", sections: ["saw"] },
    { id: "fittings", title: "Fittings you measured", sections: ["fittings"] },
  ],
  water: [
    { id: "load", title: "Seed on the mesh", sections: ["load"], open: true },
    { id: "flow", title: "Water", sections: ["water"], open: true },
    { id: "pump", title: "Pump and suction", sections: ["pump", "suction"] },
    { id: "pipes", title: "Main, manifold, hoses", sections: ["main", "manifold", "lateral", "failure"] },
    { id: "bed", title: "Seed as the water finds it", sections: ["bed"] },
    { id: "seed", title: "Seed to be raised", sections: ["seed"] },
  ],
  cost: [
    { id: "buying", title: "Currency, tax, reserve", keys: ["currency"], sections: ["buying", "exchange"] },
    { id: "supplier", title: "What suppliers ask of an order", sections: ["supplier", "choose"], add: { list: "supplier", name: "name", label: "Add a supplier", first: "Supplier" } },
    { id: "rack", title: "On the rack already", sections: ["on_hand"] },
    { id: "runs", title: "Pipe for manifold and mains", sections: ["pipe_run"] },
    { id: "work", title: "Wage, crew and minutes of work", sections: ["work"] },
    { id: "rates", title: "What is used up", sections: ["rates", "bench"] },
    { id: "other", title: "Other", rest: true },
  ],
};

// Keys seldom changed stand behind "more".
const seldom = new Set(["series", "nipple", "round", "pilot", "edge", "trim", "max_overlap", "stub",
  "pipe_out_series", "screen_thickness", "screen_open", "thickness", "open_fraction"]);

const labels = {
  name: "Name of the job", units: "Units of a bare number", drum_silos: "Drum silos to build",
  pipe_silos: "Pipe silos to build", "drum.label": "Name of this kind of drum", "drum.count": "How many such drums",
  "drum.circumference": "Round the wall", "drum.outside": "Across the wall", "drum.height": "Height", "drum.wall": "Wall thickness",
  "drum.foot_outside": "Across the foot", "drum.foot_height": "Height of the foot", "drum.head_recess": "Head below the chime",
  "load.seed_kg": "Wet seed", "load.time": "Hangs drained for",
};

const views = new Map();
let signature = "";

// bare is a key without the places in lists, and without the drum whose own
// setting of a section it is.
export const bare = (key) => key.replace(/\[\d+\]/g, "").replace(/^drum\.(?!hoops\.)([a-z_]+\.)/, "$1");
const ownDrum = (key) => /^drum\[(\d+)\]\.(?!hoops)[a-z_]+\./.exec(key)?.[1];
const slug = (key) => key.replace(/[^A-Za-z0-9_-]+/g, "-");
export const inputId = (key) => `i-${slug(key)}`;

// stepOf names the step and group that a field stands in.
function placeOf(f) {
  const key = bare(f.key);
  const section = key.includes(".") ? key.split(".")[0] : "";
  for (const [step, list] of Object.entries(groups)) {
    for (const g of list) {
      if (g.keys && g.keys.includes(key)) return [step, g];
      if (g.drum && section === "drum") return [step, g];
      if (g.sections && g.sections.includes(section)) return [step, g];
    }
  }
  return ["cost", groups.cost.at(-1)];
}

// show brings the fields up to an answer.
export function show(answer, force) {
  const fields = answer.fields || [];
  const now = fields.map((f) => f.key + f.kind + (f.words || []).join()).join("|");
  if (now !== signature) {
    signature = now;
    build(fields);
    force = true;
  }
  for (const f of fields) {
    const v = views.get(f.key);
    if (v) v.update(f, force, answer);
  }
  for (const d of document.querySelectorAll("details.group")) mark(d);
}

function mark(group) {
  const stops = group.querySelectorAll(".finding.stop, .wrong:not([hidden])").length;
  const cautions = group.querySelectorAll(".finding.caution").length;
  const text = [stops && `${stops} to mend`, cautions && `${cautions} caution${cautions > 1 ? "s" : ""}`].filter(Boolean).join(", ");
  const count = group.querySelector("summary .count");
  if (!count) return;
  words(count, text);
  if (stops && !group.dataset.opened) {
    group.open = true;
    group.dataset.opened = "yes";
  }
}

function build(fields) {
  const focus = document.activeElement && document.activeElement.id;
  const opened = new Set([...document.querySelectorAll("details[open]")].map((d) => d.id));
  views.clear();
  for (const [step, list] of Object.entries(groups)) {
    const into = document.getElementById(`${step}-fields`);
    const nodes = [];
    for (const g of list) {
      const mine = fields.filter((f) => { const [s, h] = placeOf(f); return s === step && h === g; });
      if (!mine.length && !g.add) continue;
      if (g.drum) nodes.push(...drums(mine, opened));
      else nodes.push(group(g, mine, opened));
    }
    put(into, nodes);
  }
  if (focus) document.getElementById(focus)?.focus();
}

// drums makes one group for each kind of drum.
function drums(fields, opened) {
  const kinds = new Map();
  for (const f of fields) kinds.set(kindOf(f), [...(kinds.get(kindOf(f)) || []), f]);
  const many = kinds.size > 1;
  const nodes = [...kinds].map(([kind, mine]) => {
    const is = (...names) => mine.filter((f) => names.includes(bare(f.key)));
    const hoops = mine.filter((f) => bare(f.key).startsWith("drum.hoops."));
    const last = is("drum.label", "drum.count"), across = is("drum.outside"), whole = is("drum.hoops");
    const first = mine.filter((f) => ![...hoops, ...last, ...across, ...whole].includes(f));
    const other = el("details", { class: "more", id: `more-drum-${kind}`, open: opened.has(`more-drum-${kind}`) || across.some((f) => f.value) },
      el("summary", {}, "Measured across instead of round?"), ...across.map((f) => view(f)));
    const body = el("fieldset", { class: "group plain", id: `g-drum-${kind}` },
      el("legend", {}, many ? `Drum kind ${kind + 1}` : "The drum"));
    for (const f of first) {
      body.append(view(f));
      if (bare(f.key) === "drum.circumference") body.append(other);
    }
    body.append(hoopRows(hoops, kind), ...last.map((f) => view(f)));
    if (many) body.append(el("button", { type: "button", class: "quiet", onclick: () => act([{ key: `drum[${kind}]`, value: "" }], "drum kinds") }, `Take drum kind ${kind + 1} out`));
    return body;
  });
  const n = kinds.size;
  nodes.push(el("button", { type: "button", class: "quiet", id: "add-drum", onclick: () => act([{ key: `drum[${n}].label`, value: String.fromCharCode(65 + n % 26) }], "drum kinds") }, "Another kind of drum in the lot"));
  return nodes;
}

const kindOf = (f) => Number(/^drum\[(\d+)\]/.exec(f.key)?.[1] ?? 0);

// act makes one change by a button.
function act(edits, tag) {
  seal();
  edit(edits, tag);
  seal();
}

// hoopRows holds three measures for each hoop, and lets one add or take away.
function hoopRows(fields, kind) {
  const rows = [];
  for (const f of fields) {
    const n = Number(/hoops\[(\d+)\]/.exec(f.key)?.[1] ?? 0);
    (rows[n] ||= []).push(f);
  }
  const base = `drum[${kind}].hoops`;
  const add = () => {
    const list = rows.map((row) => `{${row.map((f) => (current(f.key) || f)).filter((f) => f.value).map((f) => `${f.name} = ${JSON.stringify(f.value)}`).join(", ")}}`);
    act([{ key: base, value: `[${[...list, "{}"].join(", ")}]` }], base);
  };
  return el("div", { class: "hoops" },
    rows.map((row, i) => el("fieldset", { class: "hoop" }, el("legend", {}, `Hoop ${i + 1}${i === 0 ? ", the lowest" : ""}`), ...row.map((f) => view(f)),
      rows.length > 1 ? el("button", { type: "button", class: "quiet", onclick: () => act([{ key: `${base}[${i}]`, value: "" }], base) }, "Take out", el("span", { class: "unseen" }, ` hoop ${i + 1}`)) : null)),
    el("button", { type: "button", class: "quiet", onclick: add }, rows.length ? "Another hoop" : "Add a hoop"));
}

function group(g, fields, opened) {
  const main = fields.filter((f) => !seldom.has(f.name));
  const more = fields.filter((f) => seldom.has(f.name));
  const inside = [...main.map((f) => view(f))];
  if (more.length && main.length) {
    inside.push(el("details", { class: "more", id: `more-${g.id}`, open: opened.has(`more-${g.id}`) },
      el("summary", {}, `More about the ${g.title.toLowerCase()}`), ...more.map((f) => view(f))));
  } else inside.push(...more.map((f) => view(f)));
  if (g.add) {
    const n = new Set(fields.map((f) => /\[(\d+)\]/.exec(f.key)?.[1]).filter(Boolean)).size;
    inside.push(el("button", { type: "button", class: "quiet", onclick: () => act([{ key: `${g.add.list}[${n}].${g.add.name}`, value: `${g.add.first} ${n + 1}` }], g.add.list) }, g.add.label));
  }
  if (g.open) return el("fieldset", { class: "group plain", id: `g-${g.id}` }, el("legend", {}, g.title), ...inside);
  return el("details", { class: "group", id: `g-${g.id}`, open: opened.has(`g-${g.id}`) },
    el("summary", {}, el("span", {}, g.title), " ", el("span", { class: "count" })),
    el("fieldset", { class: "plain" }, el("legend", { class: "unseen" }, g.title), ...inside));
}

// view makes a field and keeps it.
export function view(f) {
  const v = new Field(f);
  views.set(f.key, v);
  return v.node;
}

export const fieldOf = (key) => views.get(key);

// go moves to the field of a key and opens what hides it.
export function go(key) {
  const v = views.get(key) || [...views].find(([k]) => bare(k) === bare(key))?.[1];
  if (!v) return false;
  for (let d = v.node.closest("details"); d; d = d.parentElement.closest("details")) d.open = true;
  v.input.focus({ preventScroll: true });
  const calm = matchMedia("(prefers-reduced-motion: reduce)").matches;
  v.node.scrollIntoView({ block: "center", behavior: calm ? "auto" : "smooth" });
  return true;
}

class Field {
  constructor(f) {
    const id = inputId(f.key);
    this.key = f.key;
    this.input = f.words && f.words.length ? this.choice(f, id) : this.text(f, id);
    this.both = el("output", { class: "both", id: `b-${slug(f.key)}`, for: id });
    this.wrong = el("p", { class: "wrong", id: `e-${slug(f.key)}`, hidden: true });
    this.found = el("div", { class: "found" });
    const label = labelOf(f);
    const unit = f.unit ? el("span", { class: "unit" }, f.unit) : null;
    this.node = el("div", { class: "field", "data-key": f.key },
      el("label", { for: id }, label),
      f.means && capital(f.means) !== label ? el("p", { class: "means", id: `m-${slug(f.key)}` }, f.means) : null,
      el("div", { class: "entry" }, this.input, unit, this.both),
      this.wrong, this.found);
    const described = [f.means ? `m-${slug(f.key)}` : "", `b-${slug(f.key)}`, `e-${slug(f.key)}`].filter(Boolean).join(" ");
    this.input.setAttribute("aria-describedby", described);
    if (f.means && capital(f.means) === label) this.input.setAttribute("aria-describedby", `b-${slug(f.key)} e-${slug(f.key)}`);
    this.input.addEventListener("blur", () => { seal(); this.patience(0); });
  }

  text(f, id) {
    const input = el("input", { id, type: "text", autocomplete: "off", spellcheck: "false", "data-kind": f.kind,
      autocapitalize: "off", enterkeyhint: "next", maxlength: 200, inputmode: f.kind === "count" || f.kind === "number" ? "decimal" : null });
    input.addEventListener("input", () => {
      this.patience(700);
      edit([{ key: f.key, value: input.value.trim() }], f.key);
    });
    input.addEventListener("keydown", (e) => { if (e.key === "Enter") { seal(); this.patience(0); } });
    return input;
  }

  choice(f, id) {
    const input = el("select", { id, "data-kind": f.kind });
    input.addEventListener("change", () => {
      seal();
      edit([{ key: f.key, value: input.value }], f.key);
    });
    return input;
  }

  // patience holds back a complaint while the hand is still typing.
  patience(ms) {
    clearTimeout(this.timer);
    this.hold = ms > 0;
    if (!ms) this.complain();
    else this.timer = setTimeout(() => this.patience(0), ms);
  }

  complain() {
    const text = this.error && !this.hold ? this.error : "";
    words(this.wrong, text);
    this.wrong.hidden = !text;
    if (text) this.input.setAttribute("aria-invalid", "true");
    else this.input.removeAttribute("aria-invalid");
  }

  update(f, force, answer) {
    if (this.input.localName === "select") this.options(f);
    else {
      const set = f.value ?? "";
      if (force || document.activeElement !== this.input) this.input.value = set;
      this.input.placeholder = f.fallback ? f.fallback : "";
    }
    this.error = about(answer.error, f) && !missing(f, answer) ? sentence(answer.error) : "";
    this.complain();
    words(this.both, this.error ? "" : f.both && f.both !== f.value ? (f.value ? f.both : `${f.both}, by default`) : f.value || !f.fallback ? "" : "by default");
    beside(this.found, f.key, answer);
  }

  options(f) {
    const want = ["", ...f.words];
    if (f.value && !want.includes(f.value)) want.push(f.value);
    const have = [...this.input.options].map((o) => o.value);
    if (have.join("\n") !== want.join("\n") || this.fallback !== f.fallback) {
      this.fallback = f.fallback;
      put(this.input, want.map((w) => el("option", { value: w }, w || (f.fallback ? `${f.fallback} (default)` : "–"))));
    }
    this.input.value = f.value ?? "";
  }
}

// labelOf is what a field is called on the page.
export function labelOf(f) {
  const own = ownDrum(f.key), entry = /^(supplier|pipe_run)\[(\d+)\]/.exec(f.key);
  const name = labels[bare(f.key)] || capital(human(f.name));
  if (own !== undefined) return `${name}, drum kind ${Number(own) + 1} alone`;
  return entry ? `${name}, ${human(entry[1])} ${Number(entry[2]) + 1}` : name;
}

// fieldLabel is what the field of a key is called, with its part of the silo.
export function fieldLabel(key) {
  const f = current(key);
  if (!f) return "";
  const section = bare(f.key).split(".")[0];
  const group = Object.values(groups).flat().find((g) => g.sections?.includes(section));
  return group ? `${group.title}, ${labelOf(f).toLowerCase()}` : labelOf(f);
}

// missing says that a field is merely not filled in yet.
export const missing = (f, answer) => !f.value && !f.fallback && bare(f.key).startsWith("drum.") && Boolean(answer.error);

// about says whether an error is about a field.
export const about = (e, f) => Boolean(e) && (e.field ? e.field === f.key : e.key === f.key);

export function sameKey(a, b) {
  if (!a || !b) return false;
  return a === b;
}

// sentence writes an error for a reader who sees the field it is about.
export function sentence(e) {
  let s = capital(e.why || e.text || "does not read");
  if (e.value && e.why) s = `“${e.value.replace(/^"|"$/g, "")}” ${e.why}`;
  if (e.allowed) s += `. It may be ${e.allowed}`;
  if (e.hint) s += `. ${capital(e.hint)}`;
  return `${s}.`;
}

// current is the field of a key in the newest answer.
export const current = (key) => (last.answer?.fields || []).find((f) => f.key === key);
