// What the browser holds: the scenario's text, the changes since, the kept setups; and the way back and forth.

export const MOST_KEPT = 4;

export const state = {
  name: "scenario.yaml",
  text: "",
  changes: [],
  case: "",
  units: null,
  hold: "none",
  base: [],
  kept: [],
  formKey: null,
  last: null,
  mistaken: false,
  opened: "",
};

const undo = [];
const redo = [];
const listeners = [];

function snapshot() {
  return { name: state.name, text: state.text, changes: state.changes, case: state.case, hold: state.hold, base: state.base };
}

function tell() {
  for (const listener of listeners) listener({ undo: undo.length > 0, redo: redo.length > 0 });
  remember();
}

/** Called whenever there is something to undo or redo, or no longer. */
export function onHistory(listener) {
  listeners.push(listener);
}

/** The setup as the server takes it. */
export function setup() {
  return { text: state.text, changes: state.changes, case: state.case || null };
}

/** Notes the present as what undo goes back to. Turns of one input in quick succession are one. */
let lastMark = { what: "", at: 0 };

export function mark(what) {
  const now = performance.now();
  const same = what && what === lastMark.what && now - lastMark.at < 800;
  lastMark = { what, at: now };
  if (same) return;
  undo.push(snapshot());
  if (undo.length > 200) undo.shift();
  redo.length = 0;
  tell();
}

function go(from, to) {
  if (from.length === 0) return false;
  to.push(snapshot());
  Object.assign(state, from.pop());
  lastMark = { what: "", at: 0 };
  tell();
  return true;
}

export function goBack() {
  return go(undo, redo);
}

export function goForth() {
  return go(redo, undo);
}

/** Takes the changes that the server made of edits and steps. */
export function accept(changes) {
  state.changes = changes;
  remember();
}

function remember() {
  try {
    const { name, text, opened, changes, case: load, units } = state;
    const kept = state.kept.map(({ name: n, text: t, changes: c, case: l, words }) => ({ name: n, text: t, changes: c, case: l, words }));
    sessionStorage.setItem("quartercar", JSON.stringify({ name, text, opened, changes, case: load, units, kept }));
  } catch {
    // A browser that keeps nothing still works; only a reload starts afresh.
  }
}

export { remember };

/** What a reload brings back; null the first time. */
export function remembered() {
  try {
    return JSON.parse(sessionStorage.getItem("quartercar"));
  } catch {
    return null;
  }
}
