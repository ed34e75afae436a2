// What a meter shows, in the unit of the page, and as the estate keeps it: cubic metres.

import { read, sizeOf } from "../field/quantity.js";

const unit = document.getElementById("sets").dataset.meterUnit;

/** Cubic metres in one of the page's unit. */
export const meterSize = sizeOf("volume", unit);

/** Cubic metres of a typed text; null when nothing was typed, undefined when it is none. */
export const toCubicMetres = (text) => read(text, "volume", unit);

/** A value as one would type it in the page's unit: finer than any meter, coarser than what converting there and back loses. */
export const asTyped = (cubicMetres) => (typeof cubicMetres === "number" ? String(Number((cubicMetres / meterSize).toFixed(6))) : cubicMetres);
