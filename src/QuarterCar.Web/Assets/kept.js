// Setups kept beside the present one: overlaid in the plots, in a table of differences, and back to be turned on.

import { state, setup, mark, remember, MOST_KEPT } from "./state.js";
import { ask } from "./ask.js";
import { LETTERS } from "./look.js";
import { drawPlots } from "./plots.js";
import { send, settled, forgetPending } from "./main.js";

const list = document.getElementById("kept");
const table = document.getElementById("differences");
const button = document.getElementById("keep");

const last = path => path.split(".").slice(-2).join(" ").replaceAll("_", " ").replace(/^(coilover|corner) /, "");

function describe(changes) {
  if (changes.length === 0) return "as opened";
  return changes.map(({ path, text }) => `${last(path)} ${text}`).join(", ");
}

function slot() {
  const taken = new Set(state.kept.map(k => k.slot));
  return [0, 1, 2, 3].find(i => !taken.has(i));
}

async function keep() {
  if (!await settled("it is not kept")) return;
  if (!state.last || state.mistaken || state.kept.length >= MOST_KEPT) return;
  state.kept.push({ ...setup(), slot: slot(), name: state.name, words: describe(state.changes) + (state.case ? `, ${state.case}` : ""), pictures: state.last.result.pictures });
  state.kept.sort((a, b) => a.slot - b.slot);
  changed();
}

function changed() {
  remember();
  showKept();
  if (state.last) drawPlots(state.last.result.pictures, state.last.scale, state.kept);
  compare();
}

/** Shows the list. */
export function showKept() {
  button.disabled = state.mistaken || state.kept.length >= MOST_KEPT;
  button.textContent = state.kept.length >= MOST_KEPT ? "Four are kept" : "Keep this setup";
  list.replaceChildren(...state.kept.map(kept => {
    const item = document.createElement("li");
    const mark = document.createElement("span");
    mark.className = "mark";
    mark.dataset.setup = kept.slot + 1;
    const words = document.createElement("span");
    words.className = "words";
    words.innerHTML = "<b></b> ";
    words.firstChild.textContent = LETTERS[kept.slot];
    words.append(kept.words + (kept.pictures ? "" : " (not drawn)"));
    const back = document.createElement("button");
    back.type = "button";
    back.textContent = "Turn on from here";
    back.setAttribute("aria-label", `Turn on from here, setup ${LETTERS[kept.slot]}`);
    back.addEventListener("click", () => takeUp(kept));
    const drop = document.createElement("button");
    drop.type = "button";
    drop.textContent = "Let go";
    drop.setAttribute("aria-label", `Let go, setup ${LETTERS[kept.slot]}`);
    drop.addEventListener("click", () => {
      state.kept = state.kept.filter(k => k !== kept);
      changed();
    });
    item.append(mark, words, back, drop);
    return item;
  }));
  if (state.kept.length > 0) return;
  const empty = document.createElement("li");
  empty.className = "empty";
  empty.textContent = "None yet. Keep a setup, turn something, and see both in every plot.";
  list.append(empty);
  table.replaceChildren();
}

function takeUp(kept) {
  mark("");
  forgetPending();
  Object.assign(state, { name: kept.name ?? state.name, text: kept.text, changes: kept.changes, case: kept.case ?? "", hold: "none", base: [] });
  document.getElementById("hold").value = "none";
  send();
}

/** After a reload: computes the kept ones again, in a line of their own: something may be turned meanwhile. One without an answer stays kept. */
export async function refreshKept() {
  for (const one of [...state.kept]) {
    const answer = await ask("corner", { setup: { text: one.text, changes: one.changes, case: one.case || null }, units: state.units, form: state.formKey }, "kept");
    if (answer?.result) one.pictures = answer.result.pictures;
  }
  changed();
}

/** Asks for the table of differences. */
export async function compare() {
  if (state.kept.length === 0) return;
  const setups = [setup(), ...state.kept.map(k => ({ text: k.text, changes: k.changes, case: k.case || null }))];
  const answer = await ask("compare", { setups, units: state.units });
  if (!answer) return;
  if (answer.failed) {
    table.textContent = answer.failed;
    return;
  }
  table.innerHTML = answer.table;
  for (const swatch of table.querySelectorAll(".mark")) {
    const index = Number(swatch.dataset.setup);
    const kept = index > 0 ? state.kept[index - 1] : null;
    swatch.dataset.setup = kept ? kept.slot + 1 : 0;
    if (kept) swatch.nextSibling.textContent = LETTERS[kept.slot];
  }
}

/** Starts listening. */
export function listenToKept() {
  button.addEventListener("click", keep);
}
