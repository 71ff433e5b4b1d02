// What each plot shows, as options of the chart library. Shaft showing grows upward; over travel the shaft goes in to the right.

import { DASHES, LETTERS, number } from "./look.js";

const FONT = "Inter, system-ui, 'Segoe UI', 'DejaVu Sans', sans-serif";

function axis(c, name, extra) {
  return {
    type: "value", name, nameLocation: "middle", nameTextStyle: { color: c.help, fontSize: 12, fontFamily: FONT },
    axisLabel: { color: c.help, fontSize: 12, fontFamily: FONT, hideOverlap: true, showMinLabel: false, showMaxLabel: false, formatter: v => String(Number(v.toPrecision(6))).replace("-", "\u2212") },
    axisLine: { show: true, lineStyle: { color: c.help } }, axisTick: { show: true, lineStyle: { color: c.help } }, splitLine: { lineStyle: { color: c.line, width: 0.7 } }, ...extra,
  };
}

function base(c, x, y, series, grid = {}) {
  return {
    animation: false, textStyle: { fontFamily: FONT }, grid: { left: 58, right: 14, top: 14, bottom: 40, ...grid },
    xAxis: { nameGap: 24, ...x }, yAxis: { nameGap: 40, ...y }, series,
  };
}

function line(data, color, extra = {}) {
  const { width = 2, dash = "solid", ...rest } = extra;
  return { type: "line", data, showSymbol: false, silent: true, lineStyle: { color, width, type: dash }, itemStyle: { color }, emphasis: { disabled: true }, ...rest };
}

const scaled = (points, kx, ky) => points.map(([x, y]) => [x * kx, y * ky]);

function bands(pictures, k, c, axisName, sign) {
  const stroke = pictures.stroke;
  const items = pictures.zones.map(z => [{ [axisName]: sign * z.high * k, itemStyle: { color: c.zones[z.name] } }, { [axisName]: sign * z.low * k }]);
  items.push([{ [axisName]: sign * 0, itemStyle: { color: c.zones.metal } }, { [axisName]: sign * -stroke * k }]);
  items.push([{ [axisName]: sign * stroke * k, itemStyle: { color: c.zones.metal } }, { [axisName]: sign * 2 * stroke * k }]);
  return { silent: true, data: items };
}

function spread(wanted, apart, least, most) {
  const order = wanted.map((y, i) => [y, i]).sort((a, b) => a[0] - b[0]);
  let floor = least;
  for (const place of order) {
    place[0] = Math.max(place[0], floor);
    floor = place[0] + apart;
  }
  let roof = most;
  for (const place of order.reverse()) {
    place[0] = Math.min(place[0], roof);
    roof = place[0] - apart;
  }
  return order.sort((a, b) => a[1] - b[1]).map(p => p[0]);
}

function kx(pictures, scale) {
  return pictures.overDistance ? scale.distance.perSi : 1;
}

function xAxis(pictures, scale, kept, c, key, extra = {}) {
  const k = kx(pictures, scale);
  const all = [pictures, ...kept.map(s => s.pictures)].filter(p => p[key].length > 0);
  const from = Math.min(...all.map(p => p[key][0][0]));
  const to = Math.max(...all.map(p => p[key].at(-1)[0]));
  return axis(c, pictures.overDistance ? `distance, ${scale.distance.name}` : "time, s", { min: from * k, max: to * k, ...extra });
}

function overlay(kept, key, k, ky, c) {
  return kept.map(s => line(scaled(s.pictures[key], k, ky), c.setups[s.slot + 1], { width: 1.8, dash: DASHES[s.slot + 1], endLabel: { show: key === "shaft", formatter: LETTERS[s.slot], color: c.setups[s.slot + 1], fontWeight: 700, distance: -4 } }));
}

function labels(points, c) {
  return { silent: true, symbol: "circle", symbolSize: 7, data: points, label: { show: true, position: "top", fontSize: 12, color: c.ink, fontFamily: FONT, textBorderColor: c.ground, textBorderWidth: 3, formatter: p => p.data.words ?? "" }, itemStyle: { color: c.contact } };
}

export function shaft(pictures, scale, kept, c) {
  const k = kx(pictures, scale), kl = scale.length.perSi, stroke = pictures.stroke;
  const low = Math.min(0, ...pictures.shaft.map(p => p[1]), ...kept.flatMap(s => s.pictures.shaft.map(p => p[1])));
  const min = (low - 0.06 * stroke) * kl, max = 1.06 * stroke * kl;
  const height = document.getElementById("chart-shaft").clientHeight - 54;
  const perPixel = (max - min) / Math.max(height, 50);
  const edges = pictures.edges;
  const places = spread(edges.map(e => e.showing * kl), 15 * perPixel, min, max);
  const named = pictures.events.filter(e => !e.release && (e.contact || e.words === "crossover")).sort((a, b) => a.rank - b.rank).slice(0, 7);
  const [first, end] = [pictures.shaft[0][0], pictures.shaft.at(-1)[0]];
  const early = e => e.x - first < 0.14 * (end - first);
  const again = (e, i) => named.slice(0, i).some(o => o.words === e.words && Math.abs(o.x - e.x) < 0.08 * (end - first));
  const marks = named.map((e, i) => ({ coord: [e.x * k, e.showing * kl], words: again(e, i) ? "" : e.words, itemStyle: { color: e.contact ? c.contact : c.help }, label: { position: e.contact ? (e.showing > 0.9 * stroke ? "bottom" : early(e) ? "right" : "left") : "right" } }));
  const main = line(scaled(pictures.shaft, k, kl), c.setups[0], { z: 5, markArea: bands(pictures, kl, c, "yAxis", 1), markPoint: labels(marks, c) });
  main.markLine = {
    silent: true, symbol: "none", label: { show: false }, lineStyle: { color: c.help, width: 1 },
    data: edges.filter(e => ["ride height", "crossover", "tender closes"].includes(e.name)).map(e => ({ yAxis: e.showing * kl, lineStyle: { type: e.name === "ride height" ? [7, 4] : [2, 3] } })),
  };
  const option = base(c, xAxis(pictures, scale, kept, c, "shaft"), axis(c, `shaft showing, ${scale.length.name}`, { min, max }), [...overlay(kept, "shaft", k, kl, c), main], { right: 138 });
  const beside = document.getElementById("chart-shaft").clientWidth - 138 + 16;
  option.graphic = edges.map((e, i) => ({
    type: "text", left: beside, top: 14 + (max - places[i]) / perPixel - 7, silent: true,
    style: { text: e.words, fill: c.ink, fontSize: 12, fontFamily: FONT, align: "left" },
  }));
  return option;
}

export function force(pictures, scale, kept, c) {
  const kl = scale.length.perSi, kf = scale.force.perSi, stroke = pictures.stroke;
  const top = 1.5 * pictures.curve.top;
  const of = points => points.map(([x, y]) => [-x * kl, y * kf]);
  const low = Math.min(0, ...pictures.forcePath.map(p => p[1]));
  const most = Math.max(pictures.curve.top, Math.min(top, Math.max(...pictures.forcePath.map(p => p[1]))));
  let level = 0, before = Infinity;
  const lift = e => {
    level = before - e.showing < 0.22 * stroke ? level + 1 : 0;
    before = e.showing;
    return -6 - 16 * level;
  };
  const kinks = pictures.edges.filter(e => e.name !== "full droop" && e.name !== "full bump").map(e => ({ coord: [-e.showing * kl, e.force * kf], words: e.name, itemStyle: { color: c.ink }, label: { position: "top", align: "right", offset: [4, lift(e)] } }));
  const series = [
    line(of(pictures.forcePath), c.setups[0], { width: 1.2 }),
    ...kept.map(s => line(of(s.pictures.curve.total), c.setups[s.slot + 1], { width: 1.8, dash: DASHES[s.slot + 1] })),
    line(of(pictures.curve.springs), c.ink, { width: 1.5, dash: "dashed" }),
    line(of(pictures.curve.gas), c.ink, { width: 1.5, dash: "dotted" }),
    line(of(pictures.curve.total), c.ink, { z: 5, markArea: bands(pictures, kl, c, "xAxis", -1), markPoint: labels(kinks, c) }),
  ];
  const x = axis(c, `shaft showing, ${scale.length.name}; in to the right`, { min: -1.02 * stroke * kl, max: 0.04 * stroke * kl });
  x.axisLabel = { ...x.axisLabel, formatter: v => String(Number((-v).toPrecision(6)) || 0).replace("-", "\u2212") };
  return base(c, x, axis(c, `force on the shaft, ${scale.force.name}`, { min: Math.max(low, -0.45 * pictures.curve.top) * 1.05 * kf, max: 1.06 * most * kf }), series);
}

export function damper(pictures, scale, kept, c) {
  const kv = scale.velocity.perSi, kf = scale.force.perSi;
  const share = pictures.timeShare, bin = (share.to - share.from) / share.shares.length;
  const most = Math.max(...share.shares, 1e-9);
  const dashes = ["solid", "dashed", [4, 2], "dotted"];
  const areas = share.shares.map((s, i) => [{ xAxis: (share.from + i * bin) * kv, itemStyle: { color: c.ink, opacity: s === 0 ? 0 : 0.04 + 0.3 * Math.sqrt(s / most) } }, { xAxis: (share.from + (i + 1) * bin) * kv }]);
  const lines = pictures.damper.map(d => line(scaled(d.line, kv, kf), c.ink, {
    width: 1.8, dash: dashes[Math.min(d.zone, 3)], z: 5,
    endLabel: { show: d.zone > 0, formatter: d.name, color: c.ink, fontSize: 12, align: "right", offset: [-6, -10], textBorderColor: c.ground, textBorderWidth: 3 },
  }));
  const series = [
    line([[0, 0]], c.ink, { markArea: { silent: true, data: areas } }),
    ...overlay(kept, "damperPath", kv, kf, c).map(s => ({ ...s, lineStyle: { ...s.lineStyle, width: 1 } })),
    line(scaled(pictures.damperPath, kv, kf), c.setups[0], { width: 1.3 }), ...lines,
  ];
  return base(c, axis(c, `shaft velocity, ${scale.velocity.name}; in to the right; darker: more time`), axis(c, `damper force, ${scale.force.name}`), series);
}

export function tyre(pictures, scale, kept, c) {
  const k = kx(pictures, scale), kf = scale.force.perSi;
  const main = line(scaled(pictures.tyre, k, kf), c.setups[0], {
    z: 5, markArea: { silent: true, itemStyle: { color: c.air }, label: { show: true, position: "insideTop", color: c.help, fontSize: 12 }, data: pictures.air.map(([a, b], i) => [{ xAxis: a * k, name: i === 0 ? "in the air" : "" }, { xAxis: b * k }]) },
    markLine: { silent: true, symbol: "none", lineStyle: { color: c.help, type: "dashed", width: 1.2 }, label: { position: "insideEndTop", formatter: `static, ${number(pictures.staticLoad, scale.force)} ${scale.force.name}`, color: c.ink, fontSize: 12 }, data: [{ yAxis: pictures.staticLoad * kf }] },
  });
  return base(c, xAxis(pictures, scale, kept, c, "tyre"), axis(c, `tyre load, ${scale.force.name}`, { min: 0 }), [...overlay(kept, "tyre", k, kf, c), main]);
}

export function acceleration(pictures, scale, kept, c) {
  const k = kx(pictures, scale), kg = scale.acceleration.perSi;
  const main = line(scaled(pictures.acceleration, k, kg), c.setups[0], { z: 5, markLine: { silent: true, symbol: "none", label: { show: false }, lineStyle: { color: c.help, type: "solid", width: 1 }, data: [{ yAxis: 0 }] } });
  return base(c, xAxis(pictures, scale, kept, c, "acceleration"), axis(c, "sprung acceleration, g"), [...overlay(kept, "acceleration", k, kg, c), main]);
}

export function matter(answer, c) {
  const metal = answer.touches.map(x => [x, answer.points.find(p => p[0] === x)?.[1]]);
  const series = [
    line(answer.points, c.setups[0], { showSymbol: true, symbolSize: 6, markLine: { silent: true, symbol: "none", lineStyle: { color: c.help, type: [7, 4] }, label: { formatter: "now", color: c.ink }, data: [{ xAxis: answer.now }] } }),
    { type: "scatter", data: metal, symbol: "triangle", symbolSize: 11, itemStyle: { color: c.contact }, silent: true },
  ];
  return base(c, axis(c, answer.unit ? `${answer.input}, ${answer.unit}` : answer.input, { scale: true }), axis(c, answer.figureUnit ? `${answer.figure}, ${answer.figureUnit}` : answer.figure, { scale: true, nameGap: 46 }), series, { left: 66, top: 26 });
}
