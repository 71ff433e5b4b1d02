// The corner rolling over its ground, to scale.

const NS = "http://www.w3.org/2000/svg";
const svg = document.getElementById("scene");
const WIDTH = 900, HEIGHT = 250, SPAN = 5;

let pictures = null;
let parts = null;
let scale = 1;
let datum = 0;

function make(name, css, parent = svg) {
  const element = document.createElementNS(NS, name);
  element.setAttribute("class", css);
  parent.append(element);
  return element;
}

/** Takes a new run. */
export function setScene(run) {
  pictures = run;
  svg.setAttribute("viewBox", `0 0 ${WIDTH} ${HEIGHT}`);
  if (!parts) {
    const world = make("g", "world");
    parts = { world, ground: make("path", "earth", world), wheel: make("g", "wheel-part"), link: make("path", "strut"), body: make("path", "car") };
    parts.tyre = make("circle", "tyre", parts.wheel);
    parts.hub = make("circle", "hub", parts.wheel);
    parts.spoke = make("path", "spoke", parts.wheel);
  }
  const { ground, frames } = pictures;
  const heights = ground.line.map(p => p[1]);
  const tops = frames.sprung.map(z => z + 2.7 * ground.radius + pictures.stroke);
  const low = Math.min(...heights, ...frames.unsprung), high = Math.max(...tops);
  scale = Math.min(WIDTH / SPAN, (HEIGHT - 30) / Math.max(high - low, 1));
  datum = HEIGHT - 22 + low * scale;
  const points = ground.line.map(([x, z]) => `${(x * scale).toFixed(1)} ${(-z * scale).toFixed(1)}`);
  const deep = 500;
  if (points.length > 0) parts.ground.setAttribute("d", `M${(ground.line[0][0] - 50) * scale} ${deep}L${(ground.line[0][0] - 50) * scale} ${-ground.line[0][1] * scale}L${points.join("L")}L${(ground.line.at(-1)[0] + 50) * scale} ${-ground.line.at(-1)[1] * scale}V${deep}Z`);
  const r = ground.radius * scale;
  parts.tyre.setAttribute("r", r);
  parts.hub.setAttribute("r", 0.5 * r);
}

/** Draws a frame. */
export function showScene(frame) {
  if (!pictures) return;
  const { frames, ground } = pictures;
  const x = frames.x[frame], centre = WIDTH * 0.42;
  const wheel = datum - (frames.unsprung[frame] + ground.radius) * scale;
  const body = datum - (frames.sprung[frame] + 1.9 * ground.radius + pictures.stroke) * scale;
  parts.world.setAttribute("transform", `translate(${(centre - x * scale).toFixed(1)} ${datum.toFixed(1)})`);
  const turn = (x / ground.radius * 180 / Math.PI) % 360;
  parts.wheel.setAttribute("transform", `translate(${centre} ${wheel.toFixed(1)}) rotate(${turn.toFixed(1)})`);
  const r = ground.radius * scale;
  parts.spoke.setAttribute("d", `M${-0.5 * r} 0H${0.5 * r}M0 ${-0.5 * r}V${0.5 * r}`);
  parts.link.setAttribute("d", `M${centre} ${wheel.toFixed(1)}V${body.toFixed(1)}`);
  const half = 1.15 * r, deep = 0.5 * r;
  parts.body.setAttribute("d", `M${centre - half} ${body.toFixed(1)}v${(-deep).toFixed(1)}h${2 * half}v${deep.toFixed(1)}z`);
}
