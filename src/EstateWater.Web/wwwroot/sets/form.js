// What was typed for a set, checked before it is kept.

import { clockAt } from "../field/clock.js";
import { showError } from "../field/page.js";
import { read, strangeUnit } from "../field/quantity.js";
import { say } from "../field/words.js";
import { toCubicMetres } from "./meter.js";
import { opened } from "./times.js";

const MOST_HOURS = 24;

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
  const startedAt = tapped && clockAt(Date.parse(tapped), form.dataset.start) === open.value ? Date.parse(tapped) : opened(open.value, form.dataset.start);
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
