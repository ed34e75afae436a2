// Pressures as the gauge shows them, lengths in the reader's unit. What is kept is bar and cm.

import { sizeOf } from "../field/quantity.js";
import { told } from "../field/words.js";

const DECIMALS = { bar: 1, MPa: 2 };

const inUnit = (bar, unit) => bar / sizeOf("pressure", unit);

/** As the gauge shows it, for reading. */
export const shown = (bar, unit) => told(inUnit(bar, unit).toFixed(DECIMALS[unit]));

/** As it was typed: all its decimals. */
export const exact = (bar, unit) => String(Math.round(inUnit(bar, unit) * 1e5) / 1e5);

/** The highest pressure that a chamber bears. [bar] */
export const MOST_BAR = 100;

/** The same, in a unit. */
export const most = (unit) => inUnit(MOST_BAR, unit);

/** One to show how it is written. */
export const example = (unit) => shown(12.5, unit);

/** As one reads it from a rule. */
export const shownLength = (cm, unit) => String(Math.round((cm / sizeOf("length", unit)) * 100) / 100);

/** Depths of a tube as one says them: whole inches, where no two become the same. */
export function shownDepths(depthsCm, unit) {
  const whole = depthsCm.map((cm) => String(Math.round(cm / sizeOf("length", unit))));
  return unit === "in" && new Set(whole).size === whole.length ? whole : depthsCm.map((cm) => shownLength(cm, unit));
}

/** Where tubes are read when nothing is known of one. */
export const usualDepthsCm = (unit) => ({ cm: [30, 60, 90], in: [12, 24, 36] })[unit].map((depth) => depth * sizeOf("length", unit));
