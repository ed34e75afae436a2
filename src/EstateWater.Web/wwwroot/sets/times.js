// When a set was opened and how long it ran, on the estate's clock.

import { now } from "../field/clock.js";

const DAY_MS = 24 * 3600 * 1000;
const TOLERANCE_MS = 15 * 60 * 1000;

/** The instant of a clock time: of those that are not ahead, the one nearest to the planned start; undefined for no clock time. */
export function opened(text, planned) {
  const time = /^(\d\d?):(\d\d)/.exec(text.trim());
  if (!time) {
    return undefined;
  }
  const base = Date.parse(`${planned.slice(0, 10)}T${time[1].padStart(2, "0")}:${time[2]}:00${planned.slice(-6)}`);
  const latest = now() + TOLERANCE_MS;
  const start = Date.parse(planned);
  const candidates = [-1, 0, 1].map((days) => base + days * DAY_MS).filter((at) => at <= latest);
  if (candidates.length === 0) {
    return base - Math.ceil((base - latest) / DAY_MS) * DAY_MS;
  }
  return candidates.reduce((best, at) => (Math.abs(at - start) < Math.abs(best - start) ? at : best));
}

/** Hours between two taps, to a hundredth: at least that. */
export const hoursBetween = (from, to) => Math.max(0.01, Math.round((Date.parse(to) - Date.parse(from)) / 36000) / 100);
