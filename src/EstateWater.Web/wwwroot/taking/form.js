// What was typed, checked before it is kept: the entry's values, or null with each mistake named by its field.

import { showError } from "../field/page.js";
import { read, strangeUnit } from "../field/quantity.js";
import { say } from "../field/words.js";
import { shownDepths, shownLength } from "./units.js";

/**
 * A length in cm, typed in the reader's unit or with its own beside it; null when nothing was typed, undefined when it is none.
 * What shows a length that is known is that length: 30 cm shown as 12 in stays 30 cm.
 */
export function readLength(text, unit, knownCm = []) {
  const [typed, whole] = [text.trim().replace(",", "."), shownDepths(knownCm, unit)];
  return knownCm.find((cm, i) => shownLength(cm, unit) === typed || whole[i] === typed) ?? read(text, "length", unit);
}

/** A typed length as it would be typed in another unit; what is none stays as it is. */
export function inUnit(text, from, to, knownCm) {
  const cm = from === to ? null : readLength(text, from, knownCm);
  return typeof cm === "number" ? shownLength(cm, to) : text;
}

const within = (value, low, high) => value !== undefined && value >= low && value <= high;

/** What is wrong with a number that may be left out: its unit, or the rule that it breaks; empty when nothing is. */
const mistakeIn = (input, kind, value, most, rule) => (value === null || within(value, 0, most) ? "" : strangeUnit(input.value, kind) || say(rule));

const checks = {
  chamber: (draft, field) => {
    const right = showError(field("pressure"), (draft.leaves ?? []).length === 0 ? say("noLeaves") : "");
    return right ? { measure: draft.measure, leaves: draft.leaves } : null;
  },
  soil: (draft, field) => {
    const rows = [...document.querySelectorAll("#depths .depth")].map((row) => [...row.querySelectorAll("input")]);
    const filled = rows.filter(([, value]) => value.value.trim() !== "");
    const counts = draft.soilAs === "count";
    const kind = counts ? "count" : "percent";
    const bare = counts ? "" : "%";
    const depths = filled.map(([depth, value]) => ({ depthCm: readLength(depth.value, draft.lengthUnit, draft.knownCm), typed: read(value.value, kind, bare) }));
    const wrongDepth = depths.findIndex((d, i) => !(d.depthCm > 0 && d.depthCm <= 1000) || depths.findIndex((o) => o.depthCm === d.depthCm) !== i);
    const wrongValue = depths.findIndex((d) => (counts ? !within(d.typed, 0, Infinity) : !within(d.typed, 0, 100)));
    const place = (filled[wrongDepth]?.[0] ?? filled[wrongValue]?.[1] ?? rows[0]?.[1]);
    const mistake = filled.length === 0 ? say("noDepths")
      : wrongDepth >= 0 ? strangeUnit(place.value, "length") || say("wrongDepth")
      : wrongValue >= 0 ? strangeUnit(place.value, kind) || say(counts ? "wrongCount" : "wrongContent")
      : "";
    rows.flat().forEach((input) => input.setAttribute("aria-invalid", "false"));
    const standard = read(field("standardCount").value, "count");
    const right = [
      place ? showError(place, mistake) : false,
      showError(field("standardCount"), counts && !(standard > 0) ? strangeUnit(field("standardCount").value, "count") || say("wrongStandard") : ""),
      showError(field("tube"), field("tube").value.trim() === "" ? say("wrongTube") : ""),
    ].every(Boolean);
    return right
      ? {
          tube: field("tube").value.trim(),
          standardCount: counts ? standard : null,
          depths: depths.map((d) => (counts ? { depthCm: d.depthCm, count: d.typed } : { depthCm: d.depthCm, vwcM3PerM3: Math.round(d.typed * 1e4) / 1e6 })),
        }
      : null;
  },
  canopy: (draft, field) => {
    const shoot = readLength(field("shoot").value, draft.lengthUnit, draft.knownCm);
    const [shade, tips] = ["shade", "tips"].map((name) => read(field(name).value, "percent", "%"));
    const stress = field("stress").value === "" ? null : Number(field("stress").value);
    const nothing = [shoot, shade, tips, stress].every((v) => v === null);
    const right = [
      showError(field("tips"), mistakeIn(field("tips"), "percent", tips, 100, "wrongPercent")),
      showError(field("shade"), mistakeIn(field("shade"), "percent", shade, 100, "wrongPercent")),
      showError(field("shoot"), nothing ? say("noCanopy") : mistakeIn(field("shoot"), "length", shoot, 1000, "wrongShoot")),
    ].every(Boolean);
    return right ? { shootLengthCm: shoot, shadedFraction: shade === null ? null : Math.round(shade * 1e4) / 1e6, growingTipsPct: tips, visualStress: stress } : null;
  },
  stage: (draft, field) =>
    showError(field("stage"), field("stage").value === "" ? say("noStage") : "") ? { elStage: Number(field("stage").value) } : null,
};

/** The entry's values of a kind. */
export const checked = (kind, draft, field) => checks[kind](draft, field);

/** A draft that holds what an entry told, to correct it; lengths in the reader's unit. */
export function draftOf(entry, lengthUnit) {
  const percent = (share) => (share === null || share === undefined ? "" : String(Math.round(share * 1e6) / 1e4));
  const text = (value) => (value === null || value === undefined ? "" : String(value));
  const length = (cm) => (cm === null || cm === undefined ? "" : shownLength(cm, lengthUnit));
  const fields = { note: text(entry.note) };
  switch (entry.kind) {
    case "chamber":
      return { fields, measure: entry.measure, leaves: entry.leaves };
    case "soil": {
      const counts = entry.standardCount !== null;
      return {
        fields: { ...fields, tube: entry.tube, standardCount: text(entry.standardCount) },
        soilAs: counts ? "count" : "content",
        lengthUnit,
        knownCm: entry.depths.map((d) => d.depthCm),
        depths: entry.depths.map((d) => [length(d.depthCm), counts ? text(d.count) : percent(d.vwcM3PerM3)]),
      };
    }
    case "canopy":
      return { lengthUnit, knownCm: [entry.shootLengthCm].filter(Number.isFinite), fields: { ...fields, shoot: length(entry.shootLengthCm), shade: percent(entry.shadedFraction), tips: text(entry.growingTipsPct), stress: text(entry.visualStress) } };
    default:
      return { fields: { ...fields, stage: text(entry.elStage) } };
  }
}
