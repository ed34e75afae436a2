// What was typed for a set, checked before it is kept.

import { clockAt } from "../field/clock.js";
import { showError } from "../field/page.js";
import { read, strangeUnit } from "../field/quantity.js";
import { say, told } from "../field/words.js";
import { toCubicMetres } from "./meter.js";
import { opened } from "./times.js";

const MOST_HOURS = 24;

// A set so far from its plan is more often a slip than the truth.
const FAR_SHARE = 0.5;
const FAR_START_H = 3;
const HOUR_MS = 3600000;

/** What looks like a slip beside the plan, in words; nothing is refused for it. tapped: when start was pressed; isOver: whether the hours tell the whole run. */
export function doubts(form, tapped, isOver) {
  const planned = Number(form.dataset.hours);
  const run = read(form.elements.namedItem("hours").value, "hours", "h");
  const startedAt = startOf(form, tapped);
  const early = Math.round((Date.parse(form.dataset.start) - startedAt) / HOUR_MS);
  return [
    Math.abs(early) >= FAR_START_H ? say(early > 0 ? "doubtEarly" : "doubtLate", Math.abs(early)) : "",
    isOver && run > 0 && Math.abs(run - planned) > FAR_SHARE * planned ? say("doubtHours", told(planned), told(run)) : "",
  ].filter(Boolean).join(" ");
}

/** When it was opened: the tap, unless another clock time was typed since; undefined when none was. */
function startOf(form, tapped) {
  const typed = form.elements.namedItem("opened").value;
  return tapped && (typed === "" || clockAt(Date.parse(tapped), form.dataset.start) === typed) ? Date.parse(tapped) : opened(typed, form.dataset.start);
}

/** The entry's values, or null with each mistake named by its field. tapped: when start was pressed. */
export function checked(form, couldNot, who, tapped) {
  const nameWho = () => showError(who, who.value.trim() === "" ? say("sayWho") : "");
  return couldNot ? checkedReason(form, nameWho) : checkedRun(form, nameWho, tapped);
}

function checkedReason(form, nameWho) {
  const [words, note] = ["words", "note"].map((name) => form.elements.namedItem(name));
  const reason = form.elements.namedItem("reason").value;
  const right = [
    nameWho(),
    showError(words, reason === "Other" && words.value.trim() === "" ? say("sayWords") : ""),
    showError(form.querySelector("[name=reason]"), reason === "" ? say("sayWhy") : ""),
  ].every(Boolean);
  const said = [words.value.trim(), note.value.trim()].filter(Boolean).join(". ");
  return right ? { hours: 0, notRun: reason, note: said || null } : null;
}

function checkedRun(form, nameWho, tapped) {
  const [open, hours, before, after, meter, note] = ["opened", "hours", "before", "after", "meter", "note"].map((name) => form.elements.namedItem(name));
  const run = read(hours.value, "hours", "h");
  const meters = [before, after, meter];
  const [m3Before, m3After, m3] = meters.map((input) => toCubicMetres(input.value));
  const wrong = meters.find((input) => toCubicMetres(input.value) === undefined);
  meters.forEach((input) => input.setAttribute("aria-invalid", "false"));
  const startedAt = open.value === "" ? undefined : startOf(form, tapped);
  const right = [
    nameWho(),
    showError(wrong ?? after, wrong ? strangeUnit(wrong.value, "volume") || say("wrongMeter") : m3Before !== null && m3After !== null && m3After < m3Before ? say("meterBackwards") : ""),
    showError(hours, run !== null && run >= 0 && run <= MOST_HOURS ? "" : strangeUnit(hours.value, "hours") || say("wrongHours")),
    showError(open, startedAt === undefined ? say("wrongOpened") : ""),
  ].every(Boolean);
  return right
    ? { startedAt: new Date(startedAt).toISOString(), hours: run, meterM3: m3, meterBeforeM3: m3Before, meterAfterM3: m3After, note: note.value.trim() || null }
    : null;
}
