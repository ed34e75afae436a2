// Pressures as the gauge shows them, lengths in the reader's unit. What is kept is bar and cm.

const PER_BAR = { bar: 1, MPa: 0.1 };
const DECIMALS = { bar: 1, MPa: 2 };

/** In bar, without the dust of the multiplication. */
export const toBar = (value, unit) => Math.round((value / PER_BAR[unit]) * 1e4) / 1e4;

/** As the gauge shows it, for reading. */
export const shown = (bar, unit) => (bar * PER_BAR[unit]).toFixed(DECIMALS[unit]);

/** As it was typed: all its decimals. */
export const exact = (bar, unit) => String(Math.round(bar * PER_BAR[unit] * 1e5) / 1e5);

/** The highest pressure that a chamber bears. */
export const most = (unit) => 100 * PER_BAR[unit];

/** One to show how it is written. */
export const example = (unit) => shown(12.5, unit);

const CM_PER = { cm: 1, in: 2.54 };

/** In cm, without the dust of the multiplication. */
export const toCm = (value, unit) => Math.round(value * CM_PER[unit] * 1e4) / 1e4;

/** As one reads it from a rule. */
export const shownLength = (cm, unit) => String(Math.round((cm / CM_PER[unit]) * 100) / 100);

/** Where tubes are read when nothing is known of one. */
export const usualDepthsCm = (unit) => ({ cm: [30, 60, 90], in: [12, 24, 36] })[unit].map((depth) => toCm(depth, unit));
