// Finds blocks by code, name or variety while one types, in the list and on the map at once. The list may be drawn anew
// at any time, so that nothing of it is held.

const LONGEST_WAIT_MS = 400;
const rows = () => [...document.querySelectorAll("[data-list] tr[data-block]")];
const shapes = new Map([...document.querySelectorAll("[data-map] a[data-block]")].map((shape) => [shape.dataset.block, shape]));

/** Small letters without accents, so that “syrah” finds “Syrah” and “cote” finds “Côte”. */
const plain = (text) => text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();
const textOf = (row) => plain([...row.querySelectorAll("th a, th .name"), row.dataset.variety ?? ""].map((part) => part.textContent ?? part).join(" "));

let timer = 0;

// Said once the typing rests: a count at every letter would talk over the reader.
function announce(words) {
  clearTimeout(timer);
  timer = setTimeout(() => (document.querySelector("[data-found]").textContent = words), LONGEST_WAIT_MS);
}

function show(field) {
  const wanted = plain(field.value).split(/\s+/).filter(Boolean);
  const all = rows();
  let count = 0;
  for (const row of all) {
    const hit = wanted.every((word) => textOf(row).includes(word));
    row.hidden = !hit;
    shapes.get(row.dataset.block)?.classList.toggle("away", !hit);
    count += hit ? 1 : 0;
  }
  announce(wanted.length === 0 ? "" : count === 0 ? `No block has “${field.value.trim()}” in its code, name or variety.` : `${count} of ${all.length} blocks`);
}

function clear(field) {
  field.value = "";
  show(field);
}

// The block whose code was typed, else the first found: to its hours where they can be changed, else to its own page where it alone is meant.
function goTo(field) {
  const wanted = plain(field.value.trim());
  const hits = rows().filter((row) => !row.hidden);
  const meant = hits.find((row) => plain(row.dataset.block) === wanted) ?? hits[0];
  if (!meant || wanted === "") {
    return;
  }
  const [hours, link] = [meant.querySelector("td input"), meant.querySelector("th a")];
  if (hours) {
    clear(field);
    meant.scrollIntoView({ block: "center" });
    hours.focus({ preventScroll: true });
    hours.select();
  } else if (hits.length === 1 || plain(meant.dataset.block) === wanted) {
    link.click();
  } else {
    link.focus();
  }
}

document.addEventListener("input", (event) => event.target.id === "find" && show(event.target));
document.addEventListener("keydown", (event) => {
  const field = document.getElementById("find");
  if (event.target === field && event.key === "Escape") {
    clear(field);
  } else if (event.target === field && event.key === "Enter") {
    goTo(field);
  }
  const typing = event.target.closest("input:not([type=checkbox]), textarea, select, [contenteditable], [role=dialog]");
  if (event.key === "/" && field && !typing && !event.ctrlKey && !event.metaKey && !event.altKey) {
    event.preventDefault();
    field.focus();
    field.select();
  }
});

// What a browser kept in the field over a reload counts as typed.
const kept = document.getElementById("find");
if (kept) {
  document.querySelector("[data-finder]").hidden = false;
  show(kept);
}
