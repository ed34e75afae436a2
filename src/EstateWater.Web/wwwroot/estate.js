// The map is one stop of the Tab key; arrow keys move inside it. Map and list point at each other.
const map = document.querySelector("[data-map]");
const list = document.querySelector("[data-list]");
const shapes = map ? [...map.querySelectorAll("a[data-block]")] : [];
const rows = list ? [...list.querySelectorAll("tr[data-block]")] : [];
const twins = new Map();
for (const element of [...shapes, ...rows]) {
  const both = twins.get(element.dataset.block) ?? [];
  both.push(element);
  twins.set(element.dataset.block, both);
}

function middle(shape) {
  const box = shape.querySelector("path").getBBox();
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

// The nearest block in the direction of the arrow; what lies aside counts double.
function next(from, dx, dy) {
  const start = middle(from);
  let best = null;
  let least = Infinity;
  for (const shape of shapes) {
    if (shape === from) continue;
    const at = middle(shape);
    const ahead = (at.x - start.x) * dx + (at.y - start.y) * dy;
    const aside = Math.abs((at.x - start.x) * dy) + Math.abs((at.y - start.y) * dx);
    if (ahead > 1 && ahead + 2 * aside < least) {
      least = ahead + 2 * aside;
      best = shape;
    }
  }
  return best;
}

const arrows = { ArrowRight: [1, 0], ArrowLeft: [-1, 0], ArrowDown: [0, 1], ArrowUp: [0, -1] };

map?.addEventListener("keydown", (event) => {
  const from = event.target.closest("a[data-block]");
  if (!from) return;
  const to = arrows[event.key] ? next(from, ...arrows[event.key])
    : event.key === "Home" ? shapes[0]
    : event.key === "End" ? shapes.at(-1)
    : null;
  if (arrows[event.key] || to) event.preventDefault();
  if (!to) return;
  from.setAttribute("tabindex", "-1");
  to.setAttribute("tabindex", "0");
  to.focus();
});

function point(event, on) {
  const code = event.target.closest("[data-block]")?.dataset.block;
  for (const element of twins.get(code) ?? []) element.classList.toggle("pointed", on);
}

for (const part of [map, list]) {
  part?.addEventListener("pointerover", (event) => point(event, true));
  part?.addEventListener("pointerout", (event) => point(event, false));
  part?.addEventListener("focusin", (event) => point(event, true));
  part?.addEventListener("focusout", (event) => point(event, false));
}
