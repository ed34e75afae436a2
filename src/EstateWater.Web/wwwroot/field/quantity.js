// A quantity as people type it: comma or point, in the page's unit or in another with its name beside it.
// The server reads the same (Parts/Units/TypedQuantity).

import { say } from "./words.js";

const kinds = JSON.parse(document.getElementById("field-words").dataset.units);

// One mark at most, so that 1,234.5 is refused rather than guessed at.
const WRITTEN = /^([0-9]+(?:[.,][0-9]*)?|[.,][0-9]+)\s*([\p{L}%°"″].*)?$/u;

// Without the dust of the multiplication: 1.1 MPa is 11 bar.
const DIGITS = 14;

/** How much of the kept unit one of a unit is; undefined where the kind has none of this name. */
export function sizeOf(kind, unit) {
  const { sizes } = kinds[kind];
  const name = unit.toLowerCase();
  return Object.hasOwn(sizes, name) ? sizes[name] : undefined;
}

/** The kept value of a text. unit: of a bare number. Null when nothing was typed, undefined when it is no number or in a unit that is none of the kind's. */
export function read(text, kind, unit = "") {
  if (text.trim() === "") {
    return null;
  }
  const [, number, beside = unit] = WRITTEN.exec(text.trim()) ?? [];
  const size = number && sizeOf(kind, beside);
  return size && Number((Number(number.replace(",", ".")) * size).toPrecision(DIGITS));
}

/** What to say of a unit beside a number that is none of the kind's; empty where there is none. */
export function strangeUnit(text, kind) {
  const [, , beside] = WRITTEN.exec(text.trim()) ?? [];
  if (beside === undefined || sizeOf(kind, beside) !== undefined) {
    return "";
  }
  return kinds[kind].taken === "" ? say("noUnit", beside) : say("strangeUnit", beside, kinds[kind].taken);
}
