// Colours and line styles, the same everywhere, for light and dark.

/** Okabe and Ito's palette: the setup now, then the kept ones; each also by its line. */
export const SETUPS = ["--setup-0", "--setup-1", "--setup-2", "--setup-3", "--setup-4"];
export const DASHES = ["solid", [8, 4], [2, 3], [8, 3, 2, 3], [14, 4]];
export const LETTERS = ["A", "B", "C", "D"];

let cached = null;

/** Reads the page's colours once for each scheme. */
export function colours() {
  if (cached) return cached;
  const style = getComputedStyle(document.documentElement);
  const of = name => style.getPropertyValue(name).trim();
  const zones = { droop: "--zone-droop", primary: "--zone-primary", "bump travel": "--zone-primary", secondary: "--zone-secondary", "bump stop": "--zone-bump", metal: "--zone-metal" };
  cached = {
    ink: of("--ink"), help: of("--help"), line: of("--line"), ground: of("--ground"), air: of("--air"), contact: of("--contact"), panel: of("--panel"),
    setups: SETUPS.map(of), zones: Object.fromEntries(Object.entries(zones).map(([name, variable]) => [name, of(variable)])),
  };
  return cached;
}

/** The scheme has changed. */
export function forgetColours() {
  cached = null;
}

/** A number in a unit, rounded as the tables round. */
export function number(si, unit, more = 0) {
  return Number.isFinite(si) ? (si * unit.perSi).toFixed(unit.decimals + more).replace("-", "\u2212") : "–";
}

/** The same with its unit. */
export function words(si, unit) {
  return `${number(si, unit)} ${unit.name}`;
}
