// Step 6: the pack page by page, and its files to take away.

import { $, el, put, drawing, note, say, words } from "./dom.js";
import { post, postRaw } from "./ask.js";
import { doc } from "./doc.js";
import { idle, last, onAnswer } from "./work.js";
import { errorWords, stops } from "./findings.js";
import { go } from "./fields.js";

let page = 1;
let shownFor = "";
let near = false;

async function bytes(name) {
  await idle();
  const response = await postRaw("/api/file", { path: doc.path, job: doc.job, prices: doc.prices, name });
  const as = /filename="?([^";]+)"?/.exec(response.headers.get("Content-Disposition") || "")?.[1] || name.split("/").at(-1);
  return { blob: await response.blob(), as };
}

async function take(name, button) {
  button.disabled = true;
  try {
    const { blob, as } = await bytes(name);
    const url = URL.createObjectURL(blob);
    const a = el("a", { href: url, download: as });
    document.body.append(a);
    a.click();
    a.remove();
    setTimeout(() => URL.revokeObjectURL(url), 60000);
    note(`${as} is in your downloads.`);
  } catch (cause) { note(cause.message, true); }
  button.disabled = false;
}

// printOut opens the PDF in a tab of its own, from where it is printed.
export async function printOut() {
  const tab = window.open("about:blank", "_blank");
  try {
    const { blob } = await bytes("shop-pack.pdf");
    const url = URL.createObjectURL(new Blob([blob], { type: "application/pdf" }));
    if (tab) tab.location.replace(url);
    else location.assign(url);
    say("the shop pack is open in a new tab. Print it at actual size, 100 %, and measure the check square");
  } catch (cause) {
    tab?.close();
    note(cause.message, true);
  }
}

// templates lists the templates by what the report says of them.
async function templates() {
  const { blob } = await bytes("report.json");
  const list = JSON.parse(await blob.text()).templates || [];
  const have = [...$("template").options].map((o) => o.value).join();
  if (have !== list.map((t) => t.file).join()) put($("template"), list.map((t) => el("option", { value: t.file }, t.title || t.file)));
}

// build lays the step out once.
export function build() {
  const button = (label, name, why, main) => el("li", {}, el("button", { type: "button", class: main ? null : "quiet", "data-file": name, onclick: (e) => take(name, e.currentTarget) }, label), el("span", { class: "means" }, why));
  put($("print-tools"),
    el("div", { class: "check-square" }, el("p", {}, el("b", {}, "Actual size, 100 %."), " No “fit to page”. Then measure the check square on the first template sheet before anything is marked: if it is off, nothing is cut by that print."),
      el("div", { class: "buttons" }, el("button", { type: "button", id: "print-pack", onclick: printOut }, "Open the PDF to print"))),
    el("h3", {}, "Take away"),
    el("ul", { class: "files" },
      button("Shop pack, everything", "pack.zip", "pages, templates, orders, workbook", true),
      button("Pages and templates, PDF", "shop-pack.pdf", "to print"),
      button("Bill", "bill.csv", "what to buy, as a table"),
      button("Workbook", "costs.xlsx", "sums that stay live"),
      button("Report", "report.json", "for other programs")),
    el("div", { class: "field" }, el("label", { for: "template" }, "One template, true size"),
      el("div", { class: "entry" }, el("select", { id: "template" }), el("button", { type: "button", class: "quiet", id: "template-take", onclick: (e) => {
        if ($("template").value) take($("template").value, e.currentTarget);
      } }, "Take it"))));
  put($("preview"),
    el("div", { class: "turn", role: "group", "aria-label": "Pages of the pack" },
      el("button", { type: "button", class: "quiet", id: "page-back", onclick: () => turn(page - 1) }, "Page before"),
      el("p", { id: "page-no", "aria-live": "polite" }, ""),
      el("button", { type: "button", class: "quiet", id: "page-on", onclick: () => turn(page + 1) }, "Page after")),
    el("div", { id: "page", class: "paper page" }));
  new IntersectionObserver((seen) => {
    near = seen.some((s) => s.isIntersecting);
    if (near) refresh();
  }, { rootMargin: "300px" }).observe($("print"));
}

async function turn(to) {
  const job = doc.job, prices = doc.prices;
  try {
    const got = await post("/api/page", { path: doc.path, job, prices, page: Math.max(1, to) });
    if (job !== doc.job) return;
    page = got.page;
    shownFor = job + prices;
    words($("page-no"), `Page ${got.page} of ${got.pages}${got.title ? `: ${got.title}` : ""}`);
    $("page-back").disabled = got.page <= 1;
    $("page-on").disabled = got.page >= got.pages;
    put($("page"), drawing(got.svg, `Page ${got.page}: ${got.title}`));
    $("page").classList.remove("stale");
  } catch (cause) {
    $("page").classList.add("stale");
    words($("page-no"), cause.message);
  }
}

function refresh() {
  if (last.answer && !last.answer.error && shownFor !== doc.job + doc.prices) {
    turn(page);
    templates().catch(() => { /* the list stays as it was */ });
  }
}

let timer;
onAnswer((answer, which) => {
  if (which !== "quick") return;
  const bad = Boolean(answer.error);
  for (const b of document.querySelectorAll("#print-tools button")) b.disabled = bad;
  const s = stops();
  put($("print-stop"), bad
    ? el("div", { class: "finding stop" }, el("p", {}, el("b", {}, "Not yet: "), errorWords(answer.error)), answer.error.field ? el("button", { type: "button", class: "quiet", onclick: () => go(answer.error.field) }, "Go to it") : null)
    : s.length ? el("div", { class: "finding stop" }, el("p", {}, el("b", {}, `✕ Do not cut: ${s.length} stop${s.length > 1 ? "s" : ""}. `), "The pack is made all the same, with the stops on its first page."),
      el("button", { type: "button", class: "quiet", onclick: () => $("findings").scrollIntoView() }, "See the checks")) : null);
  clearTimeout(timer);
  if (near) timer = setTimeout(refresh, 400);
});
