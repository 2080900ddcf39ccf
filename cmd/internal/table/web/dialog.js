// One dialogue at a time: a question, and the answers as buttons.

import { $, el, put } from "./dom.js";

// ask shows a question and resolves with the answer's value, null for none.
// body may hold fields; take reads them when an answer is given.
export function ask(title, body, answers, take) {
  const dialog = $("dialog");
  const before = document.activeElement;
  return new Promise((done) => {
    let answer = null; // Escape gives none
    const end = (value) => {
      answer = value !== null && take ? take(value) : value;
      dialog.close();
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
    // told once it is closed: a second question may follow at once, and must not
    // take the first one's closing for its own
    dialog.onclose = () => {
      dialog.onclose = null;
      before?.focus?.();
      done(answer);
    };
    dialog.showModal();
    (dialog.querySelector("input, select") || dialog.querySelector("button")).focus();
  });
}

// larger shows a drawing as wide as the window.
export function larger(title, svg) {
  const dialog = $("dialog"), before = document.activeElement;
  dialog.classList.add("wide");
  put(dialog, el("div", { class: "turn" }, el("h2", { id: "dialog-title" }, title), el("button", { type: "button", class: "quiet", onclick: () => dialog.close() }, "Close")),
    el("div", { class: "paper" }, svg.cloneNode(true)));
  dialog.onclose = () => {
    dialog.onclose = null;
    dialog.classList.remove("wide");
    before?.focus?.();
  };
  dialog.showModal();
}
