// The estate's clock on the phone.

const standsAt = document.querySelector("[data-stands-at]")?.dataset.standsAt;

/** Whether it is a demonstration's clock, which stands. */
export const stands = Boolean(standsAt);

/** The estate's time now: the phone's clock, or the moment at which a demonstration stands. [ms since 1970] */
export const now = () => (standsAt ? Date.parse(standsAt) : Date.now());

/** An instant as a clock of the estate shows it, in the offset of another moment of the estate. */
export function clockAt(instant, like) {
  const [, sign, hours, minutes] = /([+-])(\d\d):(\d\d)$/.exec(like);
  const offset = (sign === "-" ? -1 : 1) * (Number(hours) * 60 + Number(minutes)) * 60000;
  return new Date(instant + offset).toISOString().slice(11, 16);
}
