// How long until the hours in which leaves are read, and how long they last.

import { clockAt, now, stands } from "../field/clock.js";
import { say, toldClock } from "../field/words.js";

const MINUTE_MS = 60000;

function minutes(ms) {
  const all = Math.max(1, Math.round(ms / MINUTE_MS));
  return all >= 60 ? say("hours", Math.floor(all / 60), all % 60) : say("minutes", all);
}

/** Says it; nothing where there is no round. */
export function showWindow(line) {
  if (!line) {
    return;
  }
  const [from, to] = [Date.parse(line.dataset.from), Date.parse(line.dataset.to)];
  const state = now() < from ? "before" : now() <= to ? "open" : "closed";
  const words = stands && state !== "open" ? say("stands", toldClock(clockAt(now(), line.dataset.from)))
    : { before: () => say("opensIn", minutes(from - now())), open: () => say("closesIn", minutes(to - now())), closed: () => say("closed") }[state]();
  line.dataset.state = state;
  // Said once, not at every tick.
  if (line.textContent !== words) {
    line.textContent = words;
  }
}
