// What was typed, checked before it is kept: the entry's values, or null with each mistake named by its field.

import { number, showError } from "../field/page.js";
import { say } from "../field/words.js";
import { shownLength, toCm } from "./units.js";

const bare = (text) => text.replace(/\s*(%|cm|in|bar|MPa)\s*$/i, "");

/** A number that may carry its unit; null when nothing was typed, undefined when it is none. */
export const read = (text) => (text.trim() === "" ? null : number(bare(text)));

/**
 * A length in cm, typed in the reader's unit or with its own beside it; null and undefined as above.
 * What shows a length that is known is that length: 30 cm shown as 11.81 in stays 30 cm.
 */
export function readLength(text, unit, knownCm = []) {
  const same = knownCm.find((cm) => shownLength(cm, unit) === text.trim().replace(",", "."));
  const value = read(text);
  return same ?? (value ? toCm(value, text.match(/(cm|in)\s*$/i)?.[1].toLowerCase() ?? unit) : value);
}

/** A typed length as it would be typed in another unit; what is none stays as it is. */
export function inUnit(text, from, to, knownCm) {
  const cm = from === to ? null : readLength(text, from, knownCm);
  return typeof cm === "number" ? shownLength(cm, to) : text;
}

const within = (value, low, high) => value !== undefined && value >= low && value <= high;

const checks = {
  chamber: (draft, field) => {
    const right = showError(field("pressure"), (draft.leaves ?? []).length === 0 ? say("noLeaves") : "");
    return right ? { measure: draft.measure, leaves: draft.leaves } : null;
  },
  soil: (draft, field) => {
    const rows = [...document.querySelectorAll("#depths .depth")].map((row) => [...row.querySelectorAll("input")]);
    const filled = rows.filter(([, value]) => value.value.trim() !== "");
    const counts = draft.soilAs === "count";
    const depths = filled.map(([depth, value]) => ({ depthCm: readLength(depth.value, draft.lengthUnit, draft.knownCm), typed: read(value.value) }));
    const wrongDepth = depths.findIndex((d, i) => !(d.depthCm > 0 && d.depthCm <= 1000) || depths.findIndex((o) => o.depthCm === d.depthCm) !== i);
    const wrongValue = depths.findIndex((d) => (counts ? !within(d.typed, 0, Infinity) : !within(d.typed, 0, 100)));
    const place = (filled[wrongDepth]?.[0] ?? filled[wrongValue]?.[1] ?? rows[0]?.[1]);
    const mistake = filled.length === 0 ? say("noDepths") : wrongDepth >= 0 ? say("wrongDepth") : wrongValue >= 0 ? say(counts ? "wrongCount" : "wrongContent") : "";
    rows.flat().forEach((input) => input.setAttribute("aria-invalid", "false"));
    const standard = read(field("standardCount").value);
    const right = [
      place ? showError(place, mistake) : false,
      showError(field("standardCount"), counts && !(standard > 0) ? say("wrongStandard") : ""),
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
    const [shade, tips] = ["shade", "tips"].map((name) => read(field(name).value));
    const stress = field("stress").value === "" ? null : Number(field("stress").value);
    const nothing = [shoot, shade, tips, stress].every((v) => v === null);
    const right = [
      showError(field("tips"), tips === null || within(tips, 0, 100) ? "" : say("wrongPercent")),
      showError(field("shade"), shade === null || within(shade, 0, 100) ? "" : say("wrongPercent")),
      showError(field("shoot"), nothing ? say("noCanopy") : shoot === null || within(shoot, 0, 1000) ? "" : say("wrongShoot")),
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
