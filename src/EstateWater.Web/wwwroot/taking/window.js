// How long until the hours in which leaves are read, and how long they last.

import { now } from "../field/clock.js";
import { say } from "../field/words.js";

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
  const words = now() < from ? say("opensIn", minutes(from - now())) : now() <= to ? say("closesIn", minutes(to - now())) : say("closed");
  line.dataset.state = now() < from ? "before" : now() <= to ? "open" : "closed";
  // Said once, not at every tick.
  if (line.textContent !== words) {
    line.textContent = words;
  }
}
