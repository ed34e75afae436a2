// Finds blocks by code, name or variety while one types, in the list and on the map at once.

const LONGEST_WAIT_MS = 400;
const field = document.getElementById("find");
const found = document.querySelector("[data-found]");
const rows = [...document.querySelectorAll("[data-list] tr[data-block]")];
const shapes = new Map([...document.querySelectorAll("[data-map] a[data-block]")].map((shape) => [shape.dataset.block, shape]));

/** Small letters without accents, so that “syrah” finds “Syrah” and “cote” finds “Côte”. */
const plain = (text) => text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();
const texts = new Map(rows.map((row) => [row, plain(`${row.querySelector("th a").textContent} ${row.dataset.variety ?? ""}`)]));

let timer = 0;

// Said once the typing rests: a count at every letter would talk over the reader.
function announce(words) {
  clearTimeout(timer);
  timer = setTimeout(() => (found.textContent = words), LONGEST_WAIT_MS);
}

function show() {
  const wanted = plain(field.value).split(/\s+/).filter(Boolean);
  let count = 0;
  for (const row of rows) {
    const hit = wanted.every((word) => texts.get(row).includes(word));
    row.hidden = !hit;
    shapes.get(row.dataset.block)?.classList.toggle("away", !hit);
    count += hit ? 1 : 0;
  }
  announce(wanted.length === 0 ? "" : count === 0 ? `No block has “${field.value.trim()}” in its code, name or variety.` : `${count} of ${rows.length} blocks`);
}

field.addEventListener("input", show);
field.addEventListener("keydown", (event) => {
  if (event.key === "Escape") {
    field.value = "";
    show();
  } else if (event.key === "Enter") {
    const hits = rows.filter((row) => !row.hidden);
    if (hits.length > 0 && field.value.trim() !== "") {
      hits[0].querySelector("th a").focus();
    }
  }
});
document.addEventListener("keydown", (event) => {
  const typing = event.target.closest("input:not([type=checkbox]), textarea, select, [contenteditable]");
  if (event.key === "/" && !typing && !event.ctrlKey && !event.metaKey && !event.altKey) {
    event.preventDefault();
    field.focus();
    field.select();
  }
});
document.querySelector("[data-finder]").hidden = false;
show();
