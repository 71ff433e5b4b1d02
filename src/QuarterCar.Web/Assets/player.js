// Time: the bar, playing, and the cursor through everything that is drawn.

import { moveCursor, onPlace } from "./plots.js";
import { showMoment } from "./coilover.js";
import { showScene } from "./scene.js";
import { words } from "./look.js";

const bar = document.getElementById("time");
const button = document.getElementById("play");
const readout = document.getElementById("readout");

let run = null;
let scale = null;
let time = null;
let playing = 0;

const nearest = (list, value) => {
  let low = 0, high = list.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (list[middle] <= value) low = middle;
    else high = middle;
  }
  return value - list[low] < list[high] - value ? low : high;
};

/** Takes a new run; the cursor stays at its time, at first where the shaft is deepest. */
export function setRun(pictures, units) {
  run = pictures;
  scale = units;
  bar.max = run.frames.t.length - 1;
  if (time === null) time = run.frames.t[run.frames.showing.indexOf(Math.min(...run.frames.showing))];
  show(nearest(run.frames.t, time));
}

/** Another scenario: the cursor looks for its deepest moment again. */
export function forgetTime() {
  time = null;
}

/** Takes the cursor to a time, s. */
export function goToTime(t) {
  stop();
  time = t;
  show(nearest(run.frames.t, t));
}

function show(frame) {
  const { frames } = run;
  bar.value = frame;
  moveCursor(frame);
  showScene(frame);
  showMoment(frames.heights.slice(5 * frame, 5 * frame + 5));
  const gap = frames.gap[frame];
  const text = `${words(frames.t[frame], scale.time)} · ${words(frames.showing[frame], scale.length)} showing${gap === null ? "" : gap > 0 ? ` · gap ${words(gap, scale.length)}` : " · on the stop nut"} · tyre ${words(frames.tyre[frame], scale.force)}`;
  readout.textContent = text;
  bar.setAttribute("aria-valuetext", text);
}

function stop() {
  cancelAnimationFrame(playing);
  playing = 0;
  button.textContent = "Play";
  button.setAttribute("aria-pressed", "false");
}

function play() {
  const { t } = run.frames;
  // Where motion is to be reduced the corner moves only under the hand.
  if (matchMedia("(prefers-reduced-motion: reduce)").matches) {
    bar.focus();
    readout.textContent = "Motion is reduced on this machine: drag the bar, or use its arrow keys.";
    return;
  }
  button.textContent = "Stop";
  button.setAttribute("aria-pressed", "true");
  if (time >= t.at(-1) - 1e-6) time = t[0];
  let before = performance.now();
  const next = now => {
    time += (now - before) / 1000;
    before = now;
    const { t: times } = run.frames;
    if (time >= times.at(-1)) {
      time = times.at(-1);
      show(times.length - 1);
      stop();
      return;
    }
    show(nearest(times, time));
    playing = requestAnimationFrame(next);
  };
  playing = requestAnimationFrame(next);
}

/** Starts listening. */
export function listenToPlayer() {
  bar.addEventListener("input", () => {
    stop();
    time = run.frames.t[Number(bar.value)];
    show(Number(bar.value));
  });
  button.addEventListener("click", () => (playing ? stop() : play()));
  onPlace(place => {
    const { frames } = run;
    const list = run.overDistance ? frames.x.map(x => x * scale.distance.perSi) : frames.t;
    goToTime(frames.t[nearest(list, place)]);
  });
}
