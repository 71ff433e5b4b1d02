// The plots, by the chart library; one cursor through all of them.

/* global echarts */
import { colours, forgetColours, LETTERS } from "./look.js";
import * as options from "./options.js";

const NAMES = ["shaft", "force", "damper", "tyre", "acceleration"];
// Drawn over distance or over time, whichever the run has.
const OVER_PLACE = ["shaft", "tyre", "acceleration"];
const charts = new Map();
const cursors = new Map();
let drawn = null;
let at = 0;
let fitting = 0;

function chart(name) {
  if (charts.has(name)) return charts.get(name);
  const element = document.getElementById("chart-" + name);
  const made = echarts.init(element, null, { renderer: "canvas" });
  const cursor = document.createElement("div");
  cursor.className = "cursor";
  element.append(cursor);
  charts.set(name, made);
  cursors.set(name, cursor);
  new ResizeObserver(() => {
    if (made.getWidth() === element.clientWidth && made.getHeight() === element.clientHeight) return;
    made.resize();
    fitAgain();
  }).observe(element);
  return made;
}

// Labels beside a plot and cursors stand where the plot's size puts them.
function fitAgain() {
  cancelAnimationFrame(fitting);
  fitting = requestAnimationFrame(() => {
    if (!drawn) return;
    drawPlots(drawn.pictures, drawn.scale, drawn.kept);
    moveCursor(Math.min(at, drawn.pictures.frames.t.length - 1));
  });
}

/** Draws all plots. */
export function drawPlots(pictures, scale, kept) {
  drawn = { pictures, scale, kept };
  const shown = kept.filter(k => k.pictures);
  const alike = shown.filter(k => k.pictures.overDistance === pictures.overDistance);
  const left = leftOut(shown.filter(k => !alike.includes(k)), pictures.overDistance);
  for (const name of NAMES) {
    const over = OVER_PLACE.includes(name);
    document.getElementById("title-" + name).textContent = pictures.titles[name] + (over ? left : "");
    chart(name).setOption(options[name](pictures, scale, over ? alike : shown, colours()), { notMerge: true, silent: true });
  }
}

// A drop runs over time and a course over distance: the line of one has no place on the other's axis.
function leftOut(kept, overDistance) {
  if (kept.length === 0) return "";
  const one = kept.length === 1;
  return ` (${one ? "setup" : "setups"} ${kept.map(k => LETTERS[k.slot]).join(", ")} ${one ? "runs" : "run"} over ${overDistance ? "time" : "distance"} and ${one ? "is" : "are"} left out here)`;
}

/** Draws them again with other colours. */
export function restyle() {
  forgetColours();
  if (drawn) drawPlots(drawn.pictures, drawn.scale, drawn.kept);
}

/** Puts the cursor of every plot at a frame. */
export function moveCursor(frame) {
  if (!drawn) return;
  at = frame;
  const { pictures, scale } = drawn;
  const { frames } = pictures;
  const place = (pictures.overDistance ? frames.x[frame] * scale.distance.perSi : frames.t[frame]);
  for (const name of OVER_PLACE) across(name, place);
  spot("force", -frames.showing[frame] * scale.length.perSi, frames.force[frame] * scale.force.perSi);
  spot("damper", frames.velocity[frame] * scale.velocity.perSi, frames.damper[frame] * scale.force.perSi);
}

function across(name, x) {
  const cursor = cursors.get(name);
  const left = charts.get(name).convertToPixel({ xAxisIndex: 0 }, x);
  cursor.className = "cursor line";
  cursor.style.transform = `translateX(${left}px)`;
}

function spot(name, x, y) {
  const cursor = cursors.get(name);
  const place = charts.get(name).convertToPixel({ gridIndex: 0 }, [x, y]);
  if (!place) return;
  cursor.className = "cursor spot";
  cursor.style.transform = `translate(${place[0]}px, ${place[1]}px)`;
}

/** Takes a click into a plot over place; the listener gets the place as drawn. */
export function onPlace(listener) {
  for (const name of OVER_PLACE) {
    const made = chart(name);
    made.getZr().on("click", event => {
      const place = made.convertFromPixel({ gridIndex: 0 }, [event.offsetX, event.offsetY]);
      if (place && drawn) listener(place[0]);
    });
  }
}

/** A plot of its own, outside the row. */
export function drawAlone(name, option) {
  chart(name).setOption(option, { notMerge: true, silent: true });
  chart(name).resize();
}

/** Takes a curve away that no longer belongs to what is said beside it. */
export function clearAlone(name) {
  chart(name).clear();
}
