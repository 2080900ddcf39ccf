// Two variants side by side: this job, and one set aside or from another file.

import { $, el, put, drawing, note } from "./dom.js";
import { get, post } from "./ask.js";
import { doc } from "./doc.js";
import { idle, onAnswer } from "./work.js";
import { jobFiles } from "./files.js";

const place = "silowright-aside";
let aside = null;
try { aside = JSON.parse(sessionStorage.getItem(place)); } catch { /* none */ }

function setAside(a) {
  aside = a;
  try { sessionStorage.setItem(place, JSON.stringify(a)); } catch { /* this tab only, then */ }
  tools();
}

function tools() {
  const files = jobFiles().filter((f) => f !== doc.path);
  const pick = el("select", { id: "other-job" }, el("option", { value: "" }, "a job file …"), files.map((f) => el("option", { value: f }, f)));
  pick.addEventListener("change", async () => {
    if (!pick.value) return;
    try {
      const got = await get(`/api/open?job=${encodeURIComponent(pick.value)}`);
      setAside({ job: got.job, prices: got.prices, called: pick.value });
      run();
    } catch (cause) { note(cause.message, true); }
  });
  put($("compare-tools"),
    el("button", { type: "button", id: "aside", onclick: async () => {
      await idle();
      setAside({ job: doc.job, prices: doc.prices, called: "set aside" });
      put($("compare-out"));
      note("Set aside. Change the job, then compare.");
    } }, aside ? "Set this one aside instead" : "Set this one aside, to compare"),
    files.length ? el("div", { class: "field" }, el("label", { for: "other-job" }, "Or compare with"), pick) : null,
    aside ? el("button", { type: "button", id: "compare-run", onclick: run }, "Compare the two") : null);
}

async function run() {
  await idle();
  try { show(await post("/api/compare", { a: { job: aside.job, prices: aside.prices }, b: { job: doc.job, prices: doc.prices } })); } catch (cause) { note(cause.message, true); }
}

function show(got) {
  const bad = got.error_a || got.error_b;
  if (bad) return put($("compare-out"), el("p", { class: "wrong" }, `${got.error_a ? "The one set aside" : "The one on the table"} does not read: ${bad.text}`));
  const heads = [`A: ${aside.called}`, "B: on the table"];
  const groups = [...new Set((got.rows || []).map((r) => r.group))];
  const pictures = (d) => [d].flat().filter(Boolean).slice(0, 1).map((k) => k.section ? el("div", { class: "paper" }, drawing(k.section, "section")) : null);
  const da = got.drawings_a, db = got.drawings_b;
  put($("compare-out"),
    da || db ? el("div", { class: "two" }, el("figure", {}, pictures(da), el("figcaption", {}, heads[0])), el("figure", {}, pictures(db), el("figcaption", {}, heads[1]))) : null,
    el("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": "The two jobs side by side" }, el("table", { class: "list", id: "compared" },
      el("thead", {}, el("tr", {}, el("th", { scope: "col" }, "What"), el("th", { scope: "col" }, heads[0]), el("th", { scope: "col" }, heads[1]), el("th", { scope: "col" }, "B less A"))),
      groups.map((g) => el("tbody", {}, el("tr", {}, el("th", { colspan: 4, scope: "rowgroup", class: "sub" }, g)),
        got.rows.filter((r) => r.group === g).map((r) => el("tr", { class: r.a !== r.b ? "differs" : null }, el("th", { scope: "row" }, r.name), el("td", {}, r.a), el("td", {}, r.b), el("td", {}, r.b_less_a || ""))))))),
    (got.findings_that_differ || []).length ? el("div", {}, el("h4", {}, "Checks that differ"), el("ul", {}, got.findings_that_differ.map((f) => el("li", {}, `${f.says} – A: ${f.a}, B: ${f.b}`)))) : el("p", {}, "The checks say the same of both."));
}

export function build() {
  put($("compare"), el("details", { class: "group", id: "compare-box" }, el("summary", {}, el("span", {}, "Compare two variants")),
    el("p", { class: "means" }, "Set the job aside as it is, change what you wonder about, and see both side by side."),
    el("div", { id: "compare-tools", class: "buttons" }), el("div", { id: "compare-out" })));
  tools();
}

onAnswer(() => { if ($("compare-tools") && $("compare-tools").dataset.files !== jobFiles().join()) { $("compare-tools").dataset.files = jobFiles().join(); tools(); } });
