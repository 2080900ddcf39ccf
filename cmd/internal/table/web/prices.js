// The price list: read and shown as a table, changed one row at a time. Lines
// nobody touched stay as they were written, notes and order too.

import { $, el, put, say, capital, human } from "./dom.js";
import { doc, change, seal } from "./doc.js";
import { last, onAnswer, rework } from "./work.js";

const first = "item,description,pack,unit,width,form,from,price,supplier,quoted";
const hints = {
  item: "its name in the bill", pack: "how many units one pack holds", unit: "each, ft, in, m, yd, mL, fl oz …",
  price: "of one pack", width: "of a roll or sheet, with its unit", form: "“by length” when cut off a roll; else empty",
  from: "holds from so many packs on", supplier: "who sells it", quoted: "date of the quotation, 2031-02-10", currency: "when not the job's",
};
const short = ["item", "description", "pack", "unit", "price", "supplier", "quoted"];

// split reads CSV into records: the cells, the text as written, the line.
export function split(text) {
  const mark = text.startsWith("\ufeff") ? "\ufeff" : "";
  const body = text.slice(mark.length);
  const out = [];
  let i = 0, line = 1;
  const head = body.split(/\r?\n/).find((l) => l.trim() && !l.startsWith("#")) || "";
  const comma = count(head, ";") > count(head, ",") ? ";" : ",";
  while (i < body.length) {
    const start = i, at = line;
    const cells = [];
    let cell = "", quoted = false, note = body[i] === "#";
    for (; i < body.length; i++) {
      const c = body[i];
      if (c === "\n") line++;
      if (quoted) {
        if (c === '"' && body[i + 1] === '"') { cell += '"'; i++; } else if (c === '"') quoted = false;
        else cell += c;
      } else if (c === '"' && cell === "" && !note) quoted = true;
      else if (c === comma && !note) { cells.push(cell); cell = ""; } else if (c === "\n") break;
      else if (c !== "\r") cell += c;
    }
    cells.push(cell);
    i++;
    out.push({ cells, raw: body.slice(start, Math.min(i, body.length)), line: at, note: note || cells.join("").trim() === "" });
  }
  return { mark, comma, records: out };
}

const count = (s, c) => s.split(c).length - 1;

// join writes one record.
export function join(cells, comma) {
  return cells.map((c) => /["\r\n]/.test(c) || c.includes(comma) || c.startsWith("#") || c !== c.trim() ? `"${c.replaceAll('"', '""')}"` : c).join(comma) + "\n";
}

let editing = null; // line of the row being changed; 0 for a new one
let prefill = {};

function read() {
  const s = split(doc.prices);
  const head = s.records.find((r) => !r.note);
  const names = (head ? head.cells : first.split(",")).map((c) => c.trim().toLowerCase());
  return { ...s, head, names, rows: s.records.filter((r) => !r.note && r !== head) };
}

function write(records, list, tag) {
  const text = list.mark + records.map((r, i) => r.raw.endsWith("\n") || i === records.length - 1 ? r.raw : `${r.raw}\n`).join("");
  seal();
  change(doc.job, text, tag);
  seal();
  editing = null;
  prefill = {};
  rework();
  showPrices();
}

function save(list, row, values) {
  let names = list.names;
  let records = [...list.records];
  if (!list.head) {
    names = first.split(",");
    records.unshift({ raw: `${first}\n` });
  }
  const cells = names.map((n) => (values[n] ?? "").trim());
  const raw = join(cells, list.comma);
  if (row) records = records.map((r) => r === row ? { raw } : r);
  else {
    if (records.length && !records.at(-1).raw.endsWith("\n")) records[records.length - 1] = { raw: `${records.at(-1).raw}\n` };
    records.push({ raw });
  }
  write(records, list, "prices");
  say(row ? "row changed" : "row added");
  $("price-add").focus();
}

function remove(list, row) {
  write(list.records.filter((r) => r !== row), list, "prices");
  say(`row ${row.cells[0]} removed; undo brings it back`);
  $("price-add").focus();
}

function form(list, row) {
  const values = row ? Object.fromEntries(list.names.map((n, i) => [n, row.cells[i] ?? ""])) : prefill;
  const inputs = new Map();
  const f = el("form", { class: "price-form", novalidate: true, "aria-label": row ? `Change ${row.cells[0]}` : "A new price", onsubmit: (e) => {
    e.preventDefault();
    save(list, row, Object.fromEntries([...inputs].map(([n, i]) => [n, i.value])));
  } });
  const items = (last.sum?.costs?.items || []).map((i) => i.item || i.name || i.id).filter(Boolean);
  f.append(el("datalist", { id: "price-items" }, items.map((i) => el("option", { value: i }))));
  list.names.forEach((n, i) => {
    const id = `price-${i}`;
    const input = el("input", { id, type: "text", value: values[n] || "", autocomplete: "off", maxlength: 300,
      list: n === "item" ? "price-items" : null, "aria-describedby": hints[n] ? `${id}-m` : null });
    inputs.set(n, input);
    f.append(el("div", { class: "field" }, el("label", { for: id }, capital(human(n))), hints[n] ? el("p", { class: "means", id: `${id}-m` }, hints[n]) : null, input));
  });
  f.append(el("div", { class: "buttons" }, el("button", { type: "submit" }, row ? "Put in" : "Add"), el("button", { type: "button", class: "quiet", onclick: () => {
    editing = null;
    prefill = {};
    showPrices();
    $("price-add").focus();
  } }, "Leave as it was")));
  return f;
}

// priceOf opens the form for an item that has no price yet.
export function priceOf(item) {
  prefill = { ...item };
  editing = 0;
  $("price-list").open = true;
  showPrices();
  document.querySelector(".price-form input").focus();
}

export function showPrices() {
  const list = read();
  const error = last.answer?.priceError || null;
  const box = $("prices");
  const open = box.querySelector("details")?.open || Boolean(error) || editing !== null;
  const shown = list.names.map((n, i) => [n, i]).filter(([n]) => short.includes(n));
  const body = el("tbody");
  for (const row of list.rows) {
    const wrong = error && error.line >= row.line && error.line < row.line + Math.max(1, count(row.raw, "\n"));
    body.append(el("tr", { class: wrong ? "bad" : "" },
      shown.map(([n, i], k) => el(k === 0 ? "th" : "td", { scope: k === 0 ? "row" : null, "data-name": human(n) }, row.cells[i] || (k === 0 ? "–" : ""))),
      el("td", { class: "act" },
        el("button", { type: "button", class: "quiet", "aria-label": `Change ${row.cells[0]}, line ${row.line}`, onclick: () => {
          editing = row.line;
          showPrices();
          document.querySelector(".price-form input").focus();
        } }, "Change"),
        el("button", { type: "button", class: "quiet", "aria-label": `Remove ${row.cells[0]}, line ${row.line}`, onclick: () => remove(list, row) }, "Remove"))));
    if (wrong) body.append(el("tr", { class: "wrong-row" }, el("td", { colspan: shown.length + 1 }, el("p", { class: "wrong" }, said(error)))));
    if (editing === row.line) body.append(el("tr", { class: "form-row" }, el("td", { colspan: shown.length + 1 }, form(list, row))));
  }
  const placed = error && body.querySelector(".wrong-row");
  put(box, el("details", { id: "price-list", class: "group", open },
    el("summary", {}, el("span", {}, "Price list"), " ", el("span", { class: "count" }, `${list.rows.length} price${list.rows.length === 1 ? "" : "s"}${error ? ", one does not read" : ""}`)),
    el("p", { class: "means" }, "What one pack costs and who sells it. An item without a price is listed, and every sum says that it is incomplete."),
    error && !placed ? el("p", { class: "wrong" }, said(error)) : null,
    list.rows.length ? el("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": "Price list" }, el("table", { class: "list" },
      el("caption", { class: "unseen" }, "Prices"),
      el("thead", {}, el("tr", {}, shown.map(([n]) => el("th", { scope: "col" }, capital(human(n)))), el("th", { scope: "col" }, el("span", { class: "unseen" }, "Change or remove")))),
      body)) : el("p", {}, "No price yet."),
    editing === 0 ? form(list, null) : null,
    el("div", { class: "buttons" }, el("button", { type: "button", id: "price-add", onclick: () => priceOf({}) }, "Add a price"))));
}

const said = (e) => `${e.line ? `Line ${e.line}: ` : ""}${[e.key, e.value && `“${e.value}”`, e.why].filter(Boolean).join(" ") || e.text}${e.allowed ? `; ${e.allowed}` : ""}${e.hint ? `. ${capital(e.hint)}` : ""}.`;

let shownFor = "";
onAnswer((answer, which) => {
  const mark = doc.prices + JSON.stringify(answer.priceError || null);
  if (which === "quick" && mark !== shownFor) {
    shownFor = mark;
    if (editing === null) showPrices();
  }
});
