// What was entered on this phone: what became of it, and how to mend it.

import { clock, say } from "../field/words.js";
import { mean } from "./statistics.js";
import { shown } from "./units.js";

/** So many leaves, in words. */
export const leafCount = (count) => (count === 1 ? say("leafCountOne") : say("leafCount", count));

function what(entry, unit) {
  switch (entry.kind) {
    case "chamber":
      return say("said.chamber", entry.block, leafCount(entry.leaves.length), say(`measure.${entry.measure}`), shown(mean(entry.leaves.map((l) => l.tensionBar)), unit), unit);
    case "soil":
      return say("said.soil", entry.block, entry.tube, entry.depths.length === 1 ? say("depthCountOne") : say("depthCount", entry.depths.length));
    case "stage":
      return say("said.stage", entry.block, entry.elStage);
    default:
      return say(`said.${entry.kind}`, entry.block);
  }
}

/** What became of an entry, in words. */
export function stateOf(entry, unit) {
  const state = { sent: () => say("sentAt", clock(entry.sentAt)), refused: () => say("notTaken", entry.problem) }[entry.state] ?? (() => say("savedAt", clock(entry.enteredAt)));
  return `${state()} · ${what(entry, unit)}`;
}

/** Lists the entries that count, the newest first. actions: { correct, withdraw, forget }, each called with its entry. */
export function showMine(list, all, unit, actions) {
  const replaced = new Set(all.filter((e) => e.state !== "refused").map((e) => e.replaces).filter(Boolean));
  const standing = all.filter((e) => !replaced.has(e.entryId)).reverse();
  const key = JSON.stringify(standing.map((e) => [e.entryId, e.state, e.sentAt, unit]));
  if (list.dataset.key === key) {
    // The same list is left alone, so that no button goes from under a finger.
    return;
  }
  list.dataset.key = key;
  list.replaceChildren(...(standing.length === 0 ? [line(say("nothingYet"))] : standing.map((entry) => card(entry, unit, actions))));
}

function line(text) {
  return Object.assign(document.createElement("p"), { textContent: text });
}

function card(entry, unit, { correct, withdraw, forget }) {
  const article = Object.assign(document.createElement("article"), { className: "set-card" });
  const state = Object.assign(line(stateOf(entry, unit)), { className: "set-state" });
  state.dataset.state = entry.state;
  state.dataset.entry = entry.entryId;
  const name = `${entry.block} (${clock(entry.enteredAt)})`;
  const button = (words, work) => {
    const made = Object.assign(document.createElement("button"), { type: "button", textContent: say(words, name) });
    made.addEventListener("click", () => work(entry));
    return made;
  };
  const isWithdrawal = entry.kind === "withdrawal";
  article.append(
    state,
    ...(isWithdrawal ? [] : [button("correct", correct)]),
    ...(entry.state === "refused" ? [button("forget", forget)] : isWithdrawal ? [] : [button("withdraw", withdraw)]),
  );
  return article;
}
