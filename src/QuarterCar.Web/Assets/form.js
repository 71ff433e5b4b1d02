// The inputs: typing, arrow keys, dragging a name sideways; mistakes beside their fields.

import { edit, step } from "./main.js";
import { openMatter } from "./matter.js";

const PIXELS_A_STEP = 14;
const form = document.getElementById("form");
const help = document.getElementById("help");

const input = path => form.querySelector(`input[data-path="${CSS.escape(path)}"], select[data-path="${CSS.escape(path)}"]`);

/** Shows another set of fields; what was open stays open, and the focus stays where it was. */
export function showForm(html) {
  const open = new Map([...form.querySelectorAll("details[id]")].map(d => [d.id, d.open]));
  const focused = document.activeElement?.dataset?.path;
  form.innerHTML = html;
  for (const details of form.querySelectorAll("details[id]")) if (open.has(details.id)) details.open = open.get(details.id);
  if (focused) input(focused)?.focus();
}

/** Shows values; what somebody is typing is left alone. */
export function showValues(values) {
  for (const [path, text] of Object.entries(values)) {
    const field = input(path);
    if (!field || field.dataset.dirty) continue;
    if (field.value !== text && (text !== "" || field.tagName === "INPUT")) field.value = text;
    field.dataset.shown = text;
  }
}

/** Shows each mistake, and each word on what a field shows, beside its field; gives back the mistakes that no field shows. */
export function showProblems(problems, notes) {
  for (const shown of form.querySelectorAll(".problem:not([hidden])")) {
    shown.hidden = true;
    shown.textContent = "";
    input(shown.parentElement.dataset.path)?.removeAttribute("aria-invalid");
  }
  for (const note of notes) showBeside(note, true);
  return problems.filter(problem => !showBeside(problem, false));
}

function showBeside({ path, words }, harmless) {
  const field = input(path);
  if (!field) return false;
  const place = field.closest(".field").querySelector(".problem");
  place.hidden = false;
  place.textContent = words;
  place.classList.toggle("note", harmless);
  if (!harmless) field.setAttribute("aria-invalid", "true");
  for (let at = field.closest("details"); at; at = at.parentElement.closest("details")) at.open = true;
  return true;
}

function commit(field) {
  const dirty = field.dataset.dirty;
  delete field.dataset.dirty;
  if (dirty && field.value.trim() !== (field.dataset.shown ?? field.defaultValue)) edit(field.dataset.path, field.value);
}

function onKey(event) {
  const field = event.target;
  if (field.tagName !== "INPUT" || !field.dataset.path) return;
  if (event.key === "Enter") {
    event.preventDefault();
    commit(field);
  } else if (event.key === "Escape") {
    delete field.dataset.dirty;
    field.value = field.dataset.shown ?? field.defaultValue;
  } else if (event.key === "ArrowUp" || event.key === "ArrowDown" || event.key === "PageUp" || event.key === "PageDown") {
    event.preventDefault();
    commit(field);
    const size = event.key.startsWith("Page") ? 4 : 1;
    step(field.dataset.path, event.key.endsWith("Up") ? size : -size);
  }
}

function onDrag(event) {
  const label = event.target.closest("label[data-drag]");
  if (!label || event.button !== 0) return;
  const path = label.dataset.drag;
  let from = event.clientX;
  let moved = false;
  label.setPointerCapture(event.pointerId);
  const move = e => {
    const steps = Math.trunc((e.clientX - from) / PIXELS_A_STEP);
    if (steps === 0) return;
    moved = true;
    from += steps * PIXELS_A_STEP;
    step(path, steps);
  };
  const end = () => {
    label.removeEventListener("pointermove", move);
    if (moved) label.addEventListener("click", e => e.preventDefault(), { once: true });
  };
  label.addEventListener("pointermove", move);
  label.addEventListener("pointerup", end, { once: true });
  label.addEventListener("pointercancel", end, { once: true });
}

/** Starts listening. */
export function listenToForm() {
  form.addEventListener("keydown", onKey);
  form.addEventListener("input", event => {
    if (event.target.tagName === "INPUT") event.target.dataset.dirty = "1";
  });
  form.addEventListener("change", event => {
    const field = event.target;
    if (field.tagName === "SELECT") edit(field.dataset.path, field.value);
    else if (field.dataset.path) commit(field);
  });
  form.addEventListener("focusout", event => {
    if (event.target.dataset?.dirty) commit(event.target);
  });
  form.addEventListener("click", event => {
    const part = event.target.closest("button.part");
    if (part) edit(part.dataset.path, part.dataset.text);
    const matter = event.target.closest("button.matter");
    if (matter) openMatter(matter.dataset.path);
  });
  form.addEventListener("pointerdown", onDrag);
  form.addEventListener("focusin", event => {
    const field = event.target.closest(".field");
    if (field) help.textContent = field.querySelector(".hint").textContent;
  });
}
