// Step 5: the sums, the orders, and what has no price yet.

import { $, el, put, capital } from "./dom.js";
import { curve, shares } from "./charts.js";
import { priceOf } from "./prices.js";
import { onAnswer } from "./work.js";

export function showCosts(c) {
  if (!c) return;
  const big = (label, value, more) => !value ? null : el("div", {}, el("dt", {}, label), el("dd", {}, value, more ? el("small", {}, ` ${more}`) : null));
  const missing = c.missing || [];
  put($("sums"),
    missing.length ? el("div", { class: "finding caution" }, el("p", {}, el("b", {}, "! Incomplete. "), `${missing.length} item${missing.length > 1 ? "s have" : " has"} no price, so every sum leaves ${missing.length > 1 ? "them" : "it"} out.`),
      el("details", { class: "more" }, el("summary", {}, "Give them a price"), el("ul", { class: "missing" }, missing.map((m) => {
        const known = (c.items || []).find((i) => i.item === m) || {};
        return el("li", {}, el("span", {}, el("b", {}, m), known.description ? ` – ${known.description}` : "", known.need ? `, ${known.need} needed` : ""),
          el("button", { type: "button", class: "quiet", "aria-label": `Add a price for ${m}`, onclick: () => priceOf({ item: m, description: known.description || "", pack: "1", unit: unitOf(known.need) }) }, "Add a price"));
      })))) : null,
    el("dl", { class: "sums" },
      big("Each drum silo", c.perDrum), big("Each pipe silo", c.perPipe),
      big("The whole build", c.total, missing.length ? "so far" : ""), big("Work", c.hours), big("Days", c.days ? String(c.days) : null)),
    (c.orders || []).length ? el("details", { class: "group", id: "orders", open: $("orders")?.open }, el("summary", {}, el("span", {}, "What to buy, and from whom"), " ", el("span", { class: "count" }, `${c.orders.length} order${c.orders.length > 1 ? "s" : ""}`)),
      c.orders.map((o) => order(o, (c.items || []).filter((i) => i.supplier === o.supplier && i.packs)))) : null,
    (c.warnings || []).length ? el("ul", { class: "warnings" }, c.warnings.map((w) => el("li", {}, `! ${typeof w === "string" ? w : w.text}`))) : null);
  curve(c);
  shares(c);
}

// unitOf guesses the unit a price is asked for in from how the need is written.
const unitOf = (need) => /\b(in|ft|yd)\b/.test(need || "") ? "ft" : /\bmm\b|\bm\b/.test(need || "") ? "m" : /mL/.test(need || "") ? "mL" : "each";

function order(o, items) {
  return el("section", { class: "order" }, el("h3", {}, o.supplier || "No supplier named"),
    el("p", { class: "means" }, `goods ${o.goods}, shipping ${o.shipping}, tax ${o.tax}: ${o.total}`),
    el("ul", {}, items.map((i) => el("li", {}, `${capital(i.description || i.item)}: ${i.packs}, ${i.amount}`))));
}

onAnswer((answer, which) => { if (which === "slow") showCosts(answer.costs); });
