// Opening a scenario file, and files to take away.

import { state, setup } from "./state.js";
import { ask } from "./ask.js";
import { openText, say, settled } from "./main.js";

const LARGEST = 10_000_000;
const input = document.getElementById("open-file");

async function open(file) {
  if (file.size > LARGEST) {
    say(`${file.name}: found a file larger than 10 MB; wanted a scenario file (YAML).`);
    return;
  }
  openText(file.name, await file.text());
}

async function take(kind) {
  if (!await settled("no file of it can be written")) return;
  const answer = await ask("file", { setup: setup(), kind, units: state.units });
  if (!answer) return;
  if (answer.failed ?? answer.problem) {
    say(answer.failed ?? answer.problem);
    return;
  }
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([answer.text], { type: answer.type }));
  link.download = kind === "scenario" ? state.name : answer.name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

/** Starts listening. */
export function listenToFiles() {
  document.getElementById("open").addEventListener("click", () => input.click());
  input.addEventListener("change", () => {
    if (input.files.length > 0) open(input.files[0]);
    input.value = "";
  });
  for (const button of document.querySelectorAll("button[data-file]")) button.addEventListener("click", () => take(button.dataset.file));
}
