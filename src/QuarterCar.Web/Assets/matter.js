// How much does this matter: a small sweep of one input.

import { state, setup } from "./state.js";
import { ask } from "./ask.js";
import { colours } from "./look.js";
import { drawAlone, clearAlone } from "./plots.js";
import * as options from "./options.js";

const dialog = document.getElementById("matter");
const figure = document.getElementById("matter-figure");
const words = document.getElementById("matter-words");
let path = null;

/** Opens the curve of an input. */
export function openMatter(of) {
  path = of;
  if (!dialog.open) dialog.show();
  dialog.scrollIntoView({ block: "nearest" });
  document.getElementById("matter-close").focus();
  refresh();
}

async function refresh() {
  words.textContent = "Working it out …";
  const answer = await ask("matter", { setup: setup(), path, figure: figure.value, units: state.units, hold: state.hold, base: state.base });
  if (!answer) return;
  const why = answer.failed ?? answer.problem;
  if (why) {
    clearAlone("matter");
    words.textContent = why;
    return;
  }
  words.textContent = sentence(answer);
  drawAlone("matter", options.matter(answer, colours()));
}

function sentence(answer) {
  const values = answer.points.map(p => p[1]).filter(Number.isFinite);
  if (values.length === 0) return `The figure does not apply here. ${answer.leftOut}`;
  const digits = v => String(Number(v.toPrecision(3))).replace("-", "\u2212");
  const low = Math.min(...values), high = Math.max(...values);
  const unit = answer.unit ? ` ${answer.unit}` : "";
  const range = `${digits(answer.points[0][0])} to ${digits(answer.points.at(-1)[0])}${unit}`;
  const metal = answer.touches.length > 0 ? " Triangles: meets metal or binds its coils." : "";
  return `${answer.figure}: ${digits(low)} to ${digits(high)} ${answer.figureUnit} over ${answer.input.toLowerCase()} from ${range}${answer.held}.${metal} ${answer.leftOut}`;
}

let later = 0;

/** The setup has changed while the curve is open. */
export function refreshMatter() {
  if (!dialog.open) return;
  clearTimeout(later);
  later = setTimeout(refresh, 250);
}

/** Starts listening. */
export function listenToMatter() {
  figure.addEventListener("change", refresh);
  document.getElementById("matter-close").addEventListener("click", () => {
    dialog.close();
    document.querySelector(`button.matter[data-path="${CSS.escape(path)}"]`)?.focus();
  });
  dialog.addEventListener("keydown", event => {
    if (event.key === "Escape") document.getElementById("matter-close").click();
  });
}
