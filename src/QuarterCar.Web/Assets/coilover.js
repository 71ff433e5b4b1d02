// The coilover to scale: springs, slider, stop nut and its gap, bump stop, shaft showing. Heights come from the server, m above the lower spring plate.

import { words } from "./look.js";

const NS = "http://www.w3.org/2000/svg";
const WIDTH = 300, HEIGHT = 452, CENTRE = 128, TOP = 26, BOTTOM = 30;
const svg = document.getElementById("coilover");
const pose = document.getElementById("pose");

let parts = null;
let geometry = null;
let lengths = null;
let scale = 1;
let shown = null;

function make(name, css, text) {
  const element = document.createElementNS(NS, name);
  if (css) element.setAttribute("class", css);
  if (text !== undefined) element.textContent = text;
  svg.append(element);
  return element;
}

const set = (element, attributes) => {
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, typeof value === "number" ? value.toFixed(2) : value);
};

const y = height => HEIGHT - BOTTOM - height * scale;

function box(element, width, top, bottom) {
  set(element, { x: CENTRE - width * scale / 2, y: y(top), width: width * scale, height: Math.max(0, (top - bottom) * scale) });
}

/** Takes a new coilover: sizes, springs, standing states. */
export function setCoilover(coilover, units) {
  geometry = coilover;
  lengths = units.length;
  svg.setAttribute("viewBox", `0 0 ${WIDTH} ${HEIGHT}`);
  const tallest = Math.max(coilover.droop[2], coilover.droop[3]) + 0.075;
  scale = Math.min((HEIGHT - TOP - BOTTOM) / tallest, 74 / (coilover.inner + 2 * coilover.wire));
  svg.replaceChildren();
  parts = { back: coilover.springs.map(() => make("path", "coil-back")), shaft: make("rect", "shaft"), bump: make("rect", "bump"), body: make("rect", "body"), plate: make("rect", "plate"), slider: make("rect", "slider"), stop: make("rect", "nut"), nut: make("rect", "nut") };
  parts.front = coilover.springs.map(() => [make("path", "wire-edge"), make("path", "wire")]);
  parts.dims = make("path", "dim");
  parts.words = Object.fromEntries(["nut", "stop", "gap", "slider", "showing", "bump", "upper", "tender", "lower"].map(name => [name, make("text", name === "gap" || name === "showing" ? "strong" : "")]));
  document.getElementById("assumed").textContent = coilover.assumed;
  draw(standing() ?? shown ?? coilover.ride);
}

function standing() {
  return { ride: geometry.ride, full: geometry.full, droop: geometry.droop }[pose.value];
}

/** Draws a moment of the run, unless a standing state was chosen. */
export function showMoment(heights) {
  shown = heights;
  if (geometry && !standing()) draw(heights);
}

pose.addEventListener("change", () => geometry && draw(standing() ?? shown ?? geometry.ride));

function spring(i, from, to) {
  const { wire, coils } = geometry.springs[i];
  const thick = Math.min(wire, (to - from) / coils);
  const first = from + thick / 2, pitch = (to - from - thick) / (coils - 1);
  const half = (geometry.inner + wire) / 2 * scale;
  let back = "", dots = "";
  for (let n = 0; n < coils; n++) {
    const at = y(first + n * pitch).toFixed(1);
    dots += `M${CENTRE - half} ${at}h0M${CENTRE + half} ${at}h0`;
    back += n === coils - 1 || n === 0 ? `M${CENTRE - half} ${at}H${CENTRE + half}` : "";
    if (n < coils - 1) back += `M${CENTRE - half} ${at}L${CENTRE + half} ${y(first + (n + 1) * pitch).toFixed(1)}`;
  }
  parts.back[i].setAttribute("d", back);
  for (const [k, path] of parts.front[i].entries()) set(path, { d: dots, "stroke-width": Math.max(thick * scale - (k === 0 ? 0 : 1.6), 0.6) });
}

function label(name, at, text, right = true) {
  const element = parts.words[name];
  element.textContent = at === null ? "" : text;
  if (at !== null) set(element, { x: right ? CENTRE + 58 : CENTRE - 66, y: at + 4, "text-anchor": right ? "start" : "end" });
}

function draw([lower, upper, top, nut, showing]) {
  const g = geometry, outer = g.inner + 2 * g.wire, thin = 0.014;
  const slider = g.twoRate ? lower + g.slider : lower;
  spring(0, 0, lower);
  if (g.springs.length > 1) spring(1, slider, upper);
  if (g.springs.length > 2) spring(2, upper, top);
  box(parts.shaft, g.shaft, showing, 0);
  box(parts.bump, g.bump === null ? 0 : 0.62 * g.body, g.bump ?? 0, 0);
  box(parts.body, g.body, Math.max(g.droop[3] - g.stroke + showing + 0.06, nut + 0.03), showing);
  box(parts.plate, outer, 0, -0.012);
  box(parts.slider, g.twoRate ? outer : 0, slider, lower);
  const stop = g.nutOverSlider === null ? null : nut - g.nutOverSlider;
  box(parts.stop, stop === null ? 0 : (g.inner + g.body) / 2 + 0.006, (stop ?? 0) + thin, stop ?? 0);
  box(parts.nut, outer, nut + thin, nut);
  dimensions(slider, stop, showing);
  labels(lower, slider, upper, top, nut, stop, showing);
}

function arrow(x, a, b) {
  const [high, low] = [y(Math.max(a, b)), y(Math.min(a, b))];
  const head = low - high < 12 ? -4 : 4;
  return `M${x} ${high}V${low}M${x - 2.5} ${high + head}L${x} ${high}L${x + 2.5} ${high + head}M${x - 2.5} ${low - head}L${x} ${low}L${x + 2.5} ${low - head}`;
}

function dimensions(slider, stop, showing) {
  const left = CENTRE - 56;
  let path = arrow(left, showing, 0) + `M${CENTRE - geometry.shaft * scale / 2} ${y(showing)}H${left - 4}M${CENTRE - 40} ${y(0)}H${left - 4}`;
  if (stop !== null) path += arrow(left, stop, slider) + `M${CENTRE - 34} ${y(stop)}H${left - 4}M${CENTRE - 40} ${y(slider)}H${left - 4}`;
  parts.dims.setAttribute("d", path);
}

function labels(lower, slider, upper, top, nut, stop, showing) {
  const g = geometry;
  const right = [["nut", nut + 0.007, "coil nut"]];
  if (g.springs.length > 2) right.push(["tender", (upper + top) / 2, "tender"]);
  if (g.twoRate) right.push(["upper", (slider + upper) / 2, "upper spring"], ["slider", (slider + lower) / 2, "slider"]);
  if (stop !== null) right.push(["stop", stop + 0.007, "stop nut"]);
  if (g.bump !== null) right.push(["bump", g.bump / 2, "bump stop"]);
  right.push(["lower", lower / 2 + (g.bump ?? 0) / 4, g.twoRate ? "lower spring" : "spring"]);
  for (const name of Object.keys(parts.words)) label(name, null);
  right.sort((a, b) => b[1] - a[1]);
  let last = -Infinity;
  for (const [name, height, text] of right) {
    last = Math.max(y(height), last + 15);
    label(name, last, text);
  }
  label("showing", y(showing / 2), words(showing, lengths), false);
  if (stop !== null) label("gap", y((stop + slider) / 2), words(Math.max(0, stop - slider), lengths), false);
  svg.setAttribute("aria-label", `The coilover to scale: ${words(showing, lengths)} of shaft showing${stop === null ? "" : `, stop-nut gap ${words(Math.max(0, stop - slider), lengths)}`}`);
}
