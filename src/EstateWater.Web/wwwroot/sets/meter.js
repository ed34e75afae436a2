// What a meter shows, in the unit of the page, and as the estate keeps it: cubic metres.

const size = Number(document.getElementById("sets").dataset.meterSize);

/** Cubic metres in one of the page's unit. */
export const meterSize = size;

/** Cubic metres of a typed number; what is none stays so. */
export const toCubicMetres = (typed) => (typeof typed === "number" ? typed * size : typed);

/** A value as one would type it in the page's unit: finer than any meter, coarser than what converting there and back loses. */
export const asTyped = (cubicMetres) => (typeof cubicMetres === "number" ? String(Number((cubicMetres / size).toFixed(6))) : cubicMetres);
