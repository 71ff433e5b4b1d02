// Puts the page together: inputs to the server, its answer to words, plots, drawing and scene.

import { state, setup, mark, accept, goBack, goForth, onHistory, remembered, remember } from "./state.js";
import { ask } from "./ask.js";
import { showForm, showValues, showProblems, listenToForm } from "./form.js";
import { drawPlots, restyle } from "./plots.js";
import { setCoilover } from "./coilover.js";
import { setScene } from "./scene.js";
import { setRun, goToTime, forgetTime, listenToPlayer } from "./player.js";
import { listenToKept, showKept, refreshKept, compare } from "./kept.js";
import { listenToMatter, refreshMatter } from "./matter.js";
import { listenToFiles } from "./files.js";

const $ = id => document.getElementById(id);
const pending = { edits: [], steps: new Map() };
let pressedAt = 0;
let unanswered = true;
let sending = Promise.resolve();

/** A value typed or chosen. */
export function edit(path, text) {
  mark("edit " + path);
  pending.edits.push({ path, text });
  send();
}

/** Arrow keys or a drag on an input: so many steps up. */
export function step(path, count) {
  mark("step " + path);
  pending.steps.set(path, (pending.steps.get(path) ?? 0) + count);
  send();
}

/** Asks for the present setup and shows the answer. */
export function send() {
  sending = asking();
  return sending;
}

/** Waits for the answer to everything that was typed or chosen. False where there is none: what is shown is another setup then, and the page says what follows. */
export async function settled(follows) {
  for (let last = null; last !== sending;) {
    last = sending;
    await last;
  }
  if (unanswered) say(`What was typed or chosen last has no answer yet, so ${follows}: type it again, or undo it.`);
  return !unanswered;
}

/** Forgets what was typed and not answered. */
export function forgetPending() {
  pending.edits = [];
  pending.steps.clear();
}

async function asking() {
  pressedAt = performance.now();
  unanswered = true;
  const answer = await ask("corner", {
    setup: setup(),
    edits: pending.edits,
    steps: [...pending.steps].map(([path, count]) => ({ path, count })),
    hold: state.hold,
    base: state.base,
    units: state.units,
    form: state.formKey,
  });
  if (answer === null) return;
  if (answer.failed) {
    showFailure(answer.failed);
    return;
  }
  unanswered = false;
  forgetPending();
  accept(answer.changes);
  show(answer);
}

function show(answer) {
  state.units = answer.units;
  document.querySelector(`#units input[value=${answer.units}]`).checked = true;
  if (answer.form) {
    if (answer.form.html !== undefined) showForm(answer.form.html);
    state.formKey = answer.form.key;
    showValues(answer.form.values);
    if (answer.result) showCases(answer.form.cases, answer.form.caseWords);
  }
  const rest = showProblems(answer.problems, answer.form?.notes ?? []);
  say("");
  showMistakes(answer.problems, rest);
  state.mistaken = answer.problems.length > 0;
  document.body.classList.toggle("mistaken", state.mistaken);
  $("result").classList.toggle("stale", state.mistaken);
  showKept();
  if (answer.result) showResult(answer);
  else refreshMatter();
  const asked = pressedAt;
  requestAnimationFrame(() => {
    const done = { asked, took: performance.now() - asked, computed: answer.computedMs, answered: answer.answeredMs };
    document.body.dataset.drawn = String(Number(document.body.dataset.drawn ?? 0) + 1);
    document.dispatchEvent(new CustomEvent("drawn", { detail: done }));
  });
}

function showResult(answer) {
  const { result } = answer;
  state.last = answer;
  $("title").textContent = result.title;
  document.title = result.title + " – QuarterCar";
  $("verdict").textContent = result.verdict;
  document.body.dataset.hash = result.hash;
  $("figures").innerHTML = result.figures;
  $("warnings").innerHTML = result.warnings;
  $("all-figures").innerHTML = result.allFigures;
  $("events").innerHTML = result.events;
  setCoilover(result.pictures.coilover, answer.scale);
  setScene(result.pictures);
  drawPlots(result.pictures, answer.scale, state.kept);
  setRun(result.pictures, answer.scale);
  compare();
  refreshMatter();
}

/** A word on something that went wrong, in a place of its own: mistakes of the setup stay where they are. */
export function say(words) {
  const line = document.createElement("p");
  line.className = "alarm";
  line.textContent = words;
  $("said").replaceChildren(...(words ? [line] : []));
}

function showCases(cases, words) {
  const select = $("case");
  $("case-field").hidden = cases.length === 0;
  select.replaceChildren(new Option("as written", ""), ...cases.map(name => new Option(name, name)));
  select.value = state.case;
  $("case-words").textContent = words;
  $("case-words").hidden = words === "";
}

function showMistakes(problems, rest) {
  const box = $("mistakes");
  box.replaceChildren();
  if (problems.length === 0) return;
  const head = document.createElement("p");
  head.className = "alarm";
  const one = problems.length === 1;
  head.textContent = (one ? "One value does not work" : `${problems.length} values do not work`) + (state.last ? "; below stands the last answer that did." : `; nothing is worked out until ${one ? "it does" : "they do"}.`);
  box.append(head);
  for (const problem of rest) {
    const line = document.createElement("p");
    line.className = "mistake";
    line.textContent = `${problem.line ? `Line ${problem.line}: ` : ""}${problem.path ? problem.path + ": " : ""}${problem.words}`;
    box.append(line);
  }
}

function showFailure(words) {
  say(words);
  document.body.classList.add("mistaken");
  $("result").classList.add("stale");
}

/** Opens another scenario. */
export function openText(name, text) {
  mark("");
  forgetPending();
  Object.assign(state, { name, text, changes: [], case: "", hold: "none", base: [], units: null, formKey: null });
  forgetTime();
  $("hold").value = "none";
  send();
}

function history(go) {
  if (!go()) return;
  forgetPending();
  $("hold").value = state.hold;
  send();
}

function listen() {
  $("undo").addEventListener("click", () => history(goBack));
  $("redo").addEventListener("click", () => history(goForth));
  onHistory(can => {
    $("undo").disabled = !can.undo;
    $("redo").disabled = !can.redo;
  });
  document.addEventListener("keydown", event => {
    if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== "z" || event.target.dataset?.dirty) return;
    event.preventDefault();
    history(event.shiftKey ? goForth : goBack);
  });
  $("units").addEventListener("change", event => {
    state.units = event.target.value;
    remember();
    send();
  });
  $("hold").addEventListener("change", event => {
    mark("");
    state.hold = event.target.value;
    state.base = state.changes;
    send();
  });
  $("case").addEventListener("change", event => {
    mark("");
    state.case = event.target.value;
    send();
  });
  $("inputs").addEventListener("submit", event => event.preventDefault());
  $("events").addEventListener("click", event => {
    const button = event.target.closest("button[data-time]");
    if (button) goToTime(Number(button.dataset.time));
  });
  matchMedia("(prefers-color-scheme: dark)").addEventListener("change", restyle);
}

async function start() {
  listen();
  listenToForm();
  listenToPlayer();
  listenToKept();
  listenToMatter();
  listenToFiles();
  const opened = await (await fetch("/api/opened")).json();
  const before = remembered();
  Object.assign(state, { name: opened.name, text: opened.text, opened: opened.text });
  if (before && before.opened === opened.text) {
    Object.assign(state, { name: before.name, text: before.text, changes: before.changes, case: before.case ?? "", units: before.units, kept: (before.kept ?? []).map((k, slot) => ({ ...k, slot })) });
  }
  await send();
  if (state.kept.length > 0) await refreshKept();
  showKept();
}

start();
