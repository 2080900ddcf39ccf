// Calls to the server. The token of a table opened to the local network stands
// in the address after #; it is kept for this tab and taken out of sight.

const place = "silowright-token";
const given = /^#([A-Za-z0-9_-]{16,})$/.exec(location.hash);
if (given) {
  sessionStorage.setItem(place, given[1]);
  history.replaceState(null, "", location.pathname + location.search);
}

function headers(more) {
  const token = sessionStorage.getItem(place);
  return token ? { ...more, "X-Silowright-Token": token } : more;
}

// Refusal is an answer that is not what was asked for.
export class Refusal extends Error {
  constructor(status, answer) {
    super(reason(status, answer));
    this.status = status;
    this.answer = answer;
  }
}

function reason(status, answer) {
  if (answer && typeof answer === "object") {
    const e = answer.error || answer;
    if (typeof e === "string") return e;
    if (e.text) return e.text;
    if (e.why) return [e.key, e.why].filter(Boolean).join(": ");
  }
  if (status === 413) return "that is too large to send";
  if (status === 401 || status === 403) return "the table does not know this tab; open the address it printed once more";
  if (status === 503) return "the table is busy; try again in a moment";
  return `the table answered ${status}`;
}

async function send(url, options) {
  let response;
  try {
    response = await fetch(url, { cache: "no-store", credentials: "same-origin", ...options });
  } catch (cause) {
    if (cause.name === "AbortError") throw cause;
    throw new Refusal(0, { text: "the drawing table does not answer: is silowright serve still running? What you typed is kept here" });
  }
  if (!response.ok) {
    let answer = null;
    try { answer = await response.json(); } catch { /* the status has to do */ }
    throw new Refusal(response.status, answer);
  }
  return response;
}

export async function get(url) {
  return (await send(url, { headers: headers({}) })).json();
}

export async function post(url, body, signal) {
  return (await postRaw(url, body, signal)).json();
}

export function postRaw(url, body, signal) {
  return send(url, { method: "POST", headers: headers({ "Content-Type": "application/json" }), body: JSON.stringify(body), signal });
}

// beacon sends what must not be lost while the page goes away.
export function beacon(url, body) {
  fetch(url, { method: "POST", keepalive: true, headers: headers({ "Content-Type": "application/json" }), body: JSON.stringify(body) }).catch(() => {});
}
