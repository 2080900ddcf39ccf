// One dialogue at a time: a question, and the answers as buttons.

import { $, el, put } from "./dom.js";

// ask shows a question and resolves with the answer's value, null for none.
// body may hold fields; take reads them when an answer is given.
export function ask(title, body, answers, take) {
  const dialog = $("dialog");
  const before = document.activeElement;
  return new Promise((done) => {
    const end = (value) => {
      const out = value !== null && take ? take(value) : value;
      dialog.onclose = null;
      dialog.close();
      before?.focus?.();
      done(out);
    };
    put(dialog, el("form", { method: "dialog", onsubmit: (e) => {
      e.preventDefault();
      end((e.submitter || dialog.querySelector("button[type=submit]")).value);
    } },
    el("h2", { id: "dialog-title" }, title),
    typeof body === "string" ? el("p", {}, body) : body,
    el("div", { class: "buttons" },
      answers.map((a, i) => el("button", { type: "submit", value: a.value, class: i ? "quiet" : null, id: `answer-${a.value}` }, a.label)),
      el("button", { type: "button", class: "quiet", id: "answer-none", onclick: () => end(null) }, "Cancel"))));
    dialog.onclose = () => { dialog.onclose = null; done(null); };
    dialog.showModal();
    (dialog.querySelector("input, select") || dialog.querySelector("button")).focus();
  });
}
