// Small tools for building the page. Words from anywhere go in as text, never
// as markup; a drawing is parsed, looked through and only then shown.

const SVG = "http://www.w3.org/2000/svg";

// el makes an element: el("p", {class: "x", onclick: f}, "words", child).
export function el(tag, props = {}, ...kids) {
  return fill(document.createElement(tag), props, kids);
}

// draw makes an SVG element.
export function draw(tag, props = {}, ...kids) {
  return fill(document.createElementNS(SVG, tag), props, kids);
}

function fill(node, props, kids) {
  for (const [key, value] of Object.entries(props)) {
    if (value === undefined || value === null || value === false) continue;
    if (key.startsWith("on")) node.addEventListener(key.slice(2), value);
    else if (key === "value") node.value = value;
    else node.setAttribute(key, value === true ? "" : String(value));
  }
  node.append(...kids.flat().filter((k) => k !== null && k !== undefined && k !== false && k !== ""));
  return node;
}

export const $ = (id) => document.getElementById(id);

// put replaces what a node holds.
export function put(node, ...kids) {
  node.replaceChildren(...kids.flat().filter((k) => k !== null && k !== undefined && k !== false && k !== ""));
  return node;
}

// words sets text only when it differs, so that a live region does not repeat.
export function words(node, text) {
  if (node.textContent !== text) node.textContent = text;
}

const harmless = new Set(["svg", "g", "path", "text", "tspan", "title", "desc", "line", "rect",
  "circle", "ellipse", "polyline", "polygon", "defs", "clippath", "image", "metadata"]);

// drawing turns the text of an SVG into an element for the page. It refuses
// anything but plain shapes and words: no script, no handler, no link.
export function drawing(text, label) {
  const at = text.indexOf("<svg");
  const tree = new DOMParser().parseFromString(at > 0 ? text.slice(at) : text, "image/svg+xml");
  const root = tree.documentElement;
  if (root.localName !== "svg" || tree.querySelector("parsererror")) throw new Error("not a drawing");
  for (const node of [root, ...root.querySelectorAll("*")]) {
    if (!harmless.has(node.localName.toLowerCase())) throw new Error(`a drawing may not hold <${node.localName}>`);
    for (const a of [...node.attributes]) {
      const name = a.name.toLowerCase();
      if (name.startsWith("on") || name === "style") throw new Error(`a drawing may not hold ${a.name}`);
      if (name.endsWith("href") && !a.value.startsWith("data:image/")) throw new Error("a drawing may not hold links");
      if (name === "id") { // several drawings stand on one page
        node.classList.add(`layer-${a.value}`);
        node.removeAttribute("id");
      }
    }
  }
  const svg = document.importNode(root, true);
  const size = [svg.getAttribute("width"), svg.getAttribute("height")].map(parseFloat);
  if (!svg.hasAttribute("viewBox")) svg.setAttribute("viewBox", `0 0 ${size[0]} ${size[1]}`);
  svg.removeAttribute("width");
  svg.removeAttribute("height");
  const title = svg.querySelector("title");
  svg.setAttribute("role", "img");
  svg.setAttribute("aria-label", label || (title ? title.textContent : "drawing"));
  for (const t of svg.querySelectorAll("title")) t.remove(); // it would show as a tip over the whole drawing
  return svg;
}

let said = 0;

// say tells a screen reader, and nobody else.
export function say(text) {
  const region = $("said");
  region.textContent = text + (said++ % 2 ? "\u00a0" : ""); // the same words twice are said twice
}

// note shows a short message at the foot of the window for a while.
let noteTimer;
export function note(text, bad) {
  const region = $("note");
  region.textContent = text;
  region.classList.toggle("bad", Boolean(bad));
  region.classList.add("shown");
  clearTimeout(noteTimer);
  noteTimer = setTimeout(() => region.classList.remove("shown"), bad ? 12000 : 5000);
}

// human turns a key's name into words: below_rim → below rim.
export const human = (name) => name.replaceAll("_", " ");

// capital starts a sentence.
export const capital = (text) => text ? text[0].toUpperCase() + text.slice(1) : "";
