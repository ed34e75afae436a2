// What can be measured of any page; each gives the offenders in words, or none.

window.shifts = 0;
new PerformanceObserver((list) => list.getEntries().forEach((entry) => {
  window.shifts += entry.hadRecentInput ? 0 : entry.value;
})).observe({ type: "layout-shift", buffered: true });

const told = (e) => `${e.outerHTML.slice(0, 110)}`;
const shown = (e) => e.checkVisibility({ visibilityProperty: true }) && e.getBoundingClientRect().right > 0 && e.getBoundingClientRect().width > 0;

window.measures = {
  /** How wide the page is and what reaches past the right edge of the screen, when it is not as wide as that. */
  wide: (width) => {
    const whole = document.documentElement.scrollWidth;
    if (whole === width) {
      return [];
    }
    const inRegion = (e) => e.parentElement?.closest(".scroll, .board");
    return [...document.body.querySelectorAll("*")].filter((e) => e.getBoundingClientRect().right > width + 1 && !inRegion(e)).slice(-4).map(told).concat(`the page is ${whole} px wide`);
  },

  /** Parts that scroll sideways by themselves, but cannot be reached with keys or have no name. */
  silentRegions: () => [...document.body.querySelectorAll("*")]
    .filter((e) => ["auto", "scroll"].includes(getComputedStyle(e).overflowX) && e.scrollWidth > e.clientWidth + 1 && !e.matches("input, textarea, select"))
    .filter((e) => e.tabIndex < 0 || !(e.getAttribute("aria-label") || e.getAttribute("aria-labelledby")))
    .map(told),

  /** Targets smaller than a size. A link within a sentence may be as tall as its line (WCAG 2.5.8); on the map the list beside it is the larger twin. */
  small: (size) => [...document.querySelectorAll("a[href], button, input, select, textarea, summary")]
    .filter((e) => shown(e) && e.type !== "hidden" && !e.closest("svg") && !e.matches(":disabled"))
    .filter((e) => !(e.matches("a") && [...e.parentElement.childNodes].some((n) => n.nodeType === 3 && n.textContent.trim().length > 2)))
    .map((e) => [e, (e.matches("[type=checkbox], [type=radio]") && e.closest("label")) || e])
    .map(([e, box]) => [e, box.getBoundingClientRect()])
    .filter(([, box]) => box.height < size - 0.5 || box.width < size - 0.5)
    .map(([e, box]) => `${told(e)} ${box.width.toFixed(0)}x${box.height.toFixed(0)}`),

  /** The place of the element with the focus among those that had it, whether anything shows that it has it, and its words; nothing when none has it. */
  focus: () => {
    const e = document.activeElement;
    if (!e || e === document.body || e === document.documentElement) {
      return "";
    }
    const style = getComputedStyle(e);
    const drawn = [...e.querySelectorAll("path, rect")].some((part) => parseFloat(getComputedStyle(part).strokeWidth) >= 3);
    const outlined = style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2;
    e.dataset.focusOrder ??= String(document.querySelectorAll("[data-focus-order]").length);
    return `${e.dataset.focusOrder} ${outlined || (e.closest("svg") !== null && drawn) ? "seen" : "unseen"} ${told(e)}`;
  },

  /** Whether the skip link has the focus and stands on the screen. */
  isSkipInView: () => {
    const box = document.activeElement.getBoundingClientRect();
    return document.activeElement.matches(".skip") && box.bottom > 0 && box.right > 0 && box.top < innerHeight && box.left < innerWidth;
  },

  /** Where the skip link leads, when that is another page than this; nothing when it stays. */
  awayBySkip: () => {
    const address = document.querySelector(".skip")?.href ?? "";
    return address.split("#")[0] === location.href.split("#")[0] ? "" : address || "there is none";
  },

  /** Sum of layout shifts that nobody's click or key caused. */
  shift: () => window.shifts,
};
