// What this phone knows of sets that its page does not show any more: the plan was taken back, or the night is long over.

import { say } from "../field/words.js";

/**
 * Lists what was begun and never saved, and what the server did not take, each until it is read.
 * shown: numbers of the sets on the page; said: an entry in words; forget: called with { draft } or { entry }.
 */
export function showLeftOver(list, { shown, entries, drafts, said, forget }) {
  const begun = drafts.filter((d) => !shown.has(String(d.setId)) && (d.tappedAt || d.fields?.hours)).map((draft) => ({ draft, text: say("leftUnsaved", draft.valve ?? "–") }));
  const refused = entries.filter((e) => e.state === "refused" && !shown.has(String(e.setId))).map((entry) => ({ entry, text: said(entry) }));
  const lines = [...begun, ...refused];
  const told = lines.map((l) => l.text).join("\n");
  if (list.dataset.told !== told) {
    list.dataset.told = told; // Built anew only when it changed, so that a button keeps its focus.
    list.replaceChildren(...lines.map((line) => item(line, forget)));
  }
  list.hidden = lines.length === 0;
}

function item(line, forget) {
  const button = Object.assign(document.createElement("button"), { type: "button", textContent: say("leftRead") });
  button.addEventListener("click", () => forget(line));
  const place = document.createElement("li");
  place.append(`${line.text} `, button);
  return place;
}
