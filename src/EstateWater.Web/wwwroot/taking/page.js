import { now } from "../field/clock.js";
import { newId, Outbox } from "../field/outbox.js";
import { keepPage, rememberName, showError, showKept, showOutbox, storeOnce } from "../field/page.js";
import { read, strangeUnit } from "../field/quantity.js";
import { clock, say } from "../field/words.js";
import { drafts, forgetDraft, keepDraft, keyOf } from "./drafts.js";
import { checked, draftOf, inUnit } from "./form.js";
import { leafCount, showMine, stateOf } from "./mine.js";
import { halfWidth, leavesWanted, mean, outliers, spread } from "./statistics.js";
import { example, exact, most, MOST_BAR, shown, shownDepths, usualDepthsCm } from "./units.js";
import { showWindow } from "./window.js";

const UNIT_KEY = "estate-water-unit";
const OPEN_KEY = "estate-water-readings-open";
const TICK_MS = 15000;
const SHORTEST_BAG_MIN = 15;
const GOOD_BAG_MIN = 60;
const FIELDS = ["pressure", "group", "tube", "standardCount", "shoot", "shade", "tips", "stress", "stage", "note"];

const data = document.getElementById("field-blocks").dataset;
const blocks = new Map(JSON.parse(data.blocks).map((b) => [b.code, b]));
const numbers = JSON.parse(data.numbers);
const lengthUnit = data.lengthUnit ?? "cm"; // A page kept on the phone before it said its unit is in cm.
const [summary, who, take, round, form, leavesList, about] = ["outbox-line", "who", "take", "round", "take-form", "leaves", "about"].map((id) => document.getElementById(id));
const field = (name) => form.elements.namedItem(name);
const outbox = new Outbox({ name: "estate-water-readings", endpoint: "api/readings", shown: show });
const kept = await drafts();
let open = null;
let discarded = null;
let removed = null;
let asked = null; // The measure that was tapped while the set's leaves are of another: nothing changes before an answer.

const unit = () => field("unit").value;
const draft = () => kept.get(keyOf(open.block, open.kind)) ?? { key: keyOf(open.block, open.kind), fields: {} };
const block = () => blocks.get(open.block);
const tube = (name) => block().tubes.find((t) => t.tube === name);
const known = () => [...new Set([...(tube(field("tube").value)?.depthsCm ?? []), ...(draft().knownCm ?? [])])];
const leavesRead = () => draft().leaves ?? [];
const spliced = (list, at, gone, ...put) => [...list.slice(0, at), ...put, ...list.slice(at + gone)];
const tensions = () => leavesRead().map((leaf) => leaf.tensionBar);

async function change(values) {
  const changed = { ...draft(), ...values };
  kept.set(changed.key, changed);
  discarded = null;
  removed = null;
  try {
    await keepDraft(changed);
  } catch (error) {
    summary.textContent = say("cannotStore", error.message);
  }
  await show();
}

const depthRows = () => [...document.querySelectorAll("#depths .depth")].map((row) => [...row.querySelectorAll("input")].map((input) => input.value));

const inForm = () => ({
  fields: Object.fromEntries(FIELDS.map((name) => [name, field(name).value])),
  measure: field("measure").value,
  soilAs: field("soilAs").value,
  lengthUnit,
  ...(open.kind === "soil" ? { depths: depthRows() } : {}),
});

const typed = () => change(inForm());

/** Shows the form of a block as it was left. */
function openBlock(code, kind) {
  open = { block: code, kind };
  asked = null;
  removed = null;
  localStorage.setItem(OPEN_KEY, JSON.stringify(open));
  field("kind").value = kind;
  fill();
  fold();
  turn(true);
}

/** Shows the block's form or the round; each has its own title. */
function turn(toBlock) {
  take.hidden = !toBlock;
  round.hidden = toBlock;
  document.getElementById("title").hidden = toBlock;
}

/** What is being read is said in one line as soon as the number's field matters more. */
function fold() {
  about.open = open.kind !== "chamber" || leavesRead().length === 0;
}

async function openAndShow(code, kind) {
  openBlock(code, kind ?? ["chamber", "soil", "canopy", "stage"].find((k) => kept.has(keyOf(code, k))) ?? "chamber");
  history.pushState({ take: true }, "");
  await show();
  scrollTo(0, 0);
  document.getElementById("take-title").focus();
}

async function close() {
  const from = open?.block;
  open = null;
  localStorage.removeItem(OPEN_KEY);
  turn(false);
  who.parentElement.hidden = false;
  await show();
  (document.querySelector(`[data-open="${CSS.escape(from ?? "")}"]`) ?? document.getElementById("other")).focus();
}

function fill() {
  // Drafts from before lengths had a unit are in cm.
  const { fields, measure, soilAs, depths, lengthUnit: typedIn = "cm" } = draft();
  for (const name of FIELDS) {
    field(name).value = fields[name] ?? "";
  }
  if (open.kind === "soil" && fields.tube === undefined) {
    field("tube").value = block().tubes[0]?.tube ?? "";
  }
  const length = (text) => inUnit(text, typedIn, lengthUnit, known());
  field("shoot").value = length(field("shoot").value);
  field("measure").value = measure || block().measure;
  field("soilAs").value = soilAs || (tube(field("tube").value)?.counts ? "count" : "content");
  document.getElementById("tubes").replaceChildren(...block().tubes.map((t) => new Option(t.tube)));
  fillDepths(depths?.map(([depth, value]) => [length(depth), value]) ?? depthsOf(tube(field("tube").value)));
  form.querySelectorAll(".set-error").forEach((error) => (error.hidden = true));
  form.querySelectorAll("[aria-invalid]").forEach((input) => input.setAttribute("aria-invalid", "false"));
  document.getElementById("leaf-hint").textContent = "";
}

const depthsOf = (tube) => shownDepths(tube?.depthsCm ?? usualDepthsCm(lengthUnit), lengthUnit).map((depth) => [depth, ""]);

function fillDepths(rows) {
  document.getElementById("depths").replaceChildren(...rows.map(([depth, value]) => depthRow(depth, value)));
}

function depthRow(depth, value) {
  const row = document.createElement("div");
  row.className = "depth set-inputs";
  const names = [say("depth"), say(field("soilAs").value)];
  row.append(...[depth, value].map((text, i) => {
    const label = document.createElement("label");
    const input = Object.assign(document.createElement("input"), { type: "text", inputMode: "decimal", autocomplete: "off", value: text });
    input.dataset.error = "depths-error";
    input.setAttribute("aria-describedby", "depths-error");
    label.append(names[i], input);
    return label;
  }));
  return row;
}

/** Adds the leaf that was typed, or changes the one that is being corrected. */
async function addLeaf() {
  const input = field("pressure");
  const tensionBar = read(input.value, "pressure", unit());
  const rule = say("wrongPressure", most(unit()), unit(), example(unit()));
  if (!showError(input, tensionBar > 0 && tensionBar <= MOST_BAR ? "" : strangeUnit(input.value, "pressure") || rule)) {
    return;
  }
  const { baggedAt, correctedLeaf: at = leavesRead().length } = draft();
  const measure = field("measure").value;
  const leaf = leavesRead()[at] ?? {
    takenAt: new Date(now()).toISOString(),
    ...(field("group").value.trim() ? { group: field("group").value.trim() } : {}),
    ...(measure === "stem" && baggedAt ? { baggedMin: Math.round((Date.now() - Date.parse(baggedAt)) / 6000) / 10 } : {}),
  };
  // At once: a later focus would take the letters of whoever has gone on to another field.
  leafField("");
  const isFirst = leavesRead().length === 0;
  await change({ ...inForm(), leaves: spliced(leavesRead(), at, 1, { ...leaf, tensionBar }), correctedLeaf: undefined });
  if (isFirst) {
    fold();
    input.scrollIntoView({ block: "nearest" });
  }
  const [low, high] = numbers.plausible[measure];
  document.getElementById("leaf-hint").textContent = outliers(tensions(), numbers).includes(at)
    ? say("far")
    : tensionBar < low || tensionBar > high ? say("unusual", shown(tensionBar, unit()), unit()) : "";
}

function leafField(text) {
  field("pressure").value = text;
  field("pressure").focus();
  document.getElementById("leaf-hint").textContent = "";
}

/** Whether a pressure was typed that is in no leaf yet; says so. */
function isLeafOpen() {
  const leaf = leavesRead()[draft().correctedLeaf];
  const text = field("pressure").value.trim();
  return !showError(field("pressure"), text === "" || (leaf && text === exact(leaf.tensionBar, unit())) ? "" : say("addFirst"));
}

async function correctLeaf(at) {
  if (at === draft().correctedLeaf) {
    await keepLeaf();
    return;
  }
  if (!isLeafOpen()) {
    leafField(exact(leavesRead()[at].tensionBar, unit()));
    await change({ ...inForm(), correctedLeaf: at });
  }
}

async function keepLeaf() {
  leafField("");
  showError(field("pressure"), "");
  field("pressure").focus();
  await change({ ...inForm(), correctedLeaf: undefined });
}

async function removeLeaf() {
  const { correctedLeaf: at, leaves } = draft();
  leafField("");
  showError(field("pressure"), "");
  await change({ ...inForm(), leaves: spliced(leaves, at, 1), correctedLeaf: undefined });
  removed = { at, leaf: leaves[at] };
  await show();
}

async function bringLeafBack() {
  await change({ leaves: spliced(leavesRead(), removed.at, 0, removed.leaf) });
  field("pressure").focus();
}

/** Keeps what the form says as an entry; false after saying why not. */
async function keepEntry() {
  if (form.dataset.saving) {
    return false;
  }
  if (open.kind === "chamber" && isLeafOpen()) {
    return false;
  }
  const values = checked(open.kind, { ...draft(), measure: field("measure").value, soilAs: field("soilAs").value, lengthUnit, knownCm: known() }, field);
  const named = showError(who, who.value.trim() === "" ? say("sayWho") : "");
  if (values === null || !named) {
    return false;
  }
  const { key, replaces = null } = draft();
  return storeOnce(form, summary, async () => {
    await outbox.keep({
      entryId: newId(),
      kind: open.kind,
      block: open.block,
      takenAt: new Date(now()).toISOString(),
      ...values,
      note: field("note").value.trim() || null,
      takenBy: who.value.trim(),
      replaces,
      enteredAt: new Date().toISOString(),
    });
    await forgetDraft(key);
    kept.delete(key);
  });
}

async function save() {
  if (await keepEntry()) {
    await leave();
    await outbox.send();
  }
}

/** Saves the leaves that were read and begins a set of another measure; leaves that are in their bags stay so. */
async function beginSet(measure) {
  const { baggedAt } = draft();
  if (await keepEntry()) {
    asked = null;
    await change({ measure, baggedAt });
    fill();
    fold();
    await show();
    field("pressure").focus();
    await outbox.send();
  }
}

/** Whether leaves were read already as another measure than was tapped: then it is asked what is meant. */
function asksFirst(measure) {
  asked = leavesRead().length > 0 && measure !== draft().measure ? measure : null;
  if (asked) {
    field("measure").value = draft().measure;
  }
  return asked !== null;
}

async function changeMeasure(measure) {
  asked = null;
  fold();
  field("measure").value = measure;
  const leaves = measure === "stem" ? leavesRead() : leavesRead().map(({ baggedMin, ...leaf }) => leaf);
  await change({ ...inForm(), leaves });
  field("pressure").focus();
}

async function keepMeasure() {
  asked = null;
  fold();
  await show();
  field("pressure").focus();
}

/** Back to the round, the way that the phone's own button goes. */
async function leave() {
  if (!history.state?.take) {
    await close();
    return;
  }
  // What listens for the phone's own button closes the form.
  const gone = new Promise((resolve) => addEventListener("popstate", resolve, { once: true }));
  history.back();
  await gone;
}

async function discard() {
  if (discarded) {
    const again = discarded;
    kept.set(again.key, again);
    await keepDraft(again);
    discarded = null;
  } else {
    discarded = kept.get(draft().key) ?? null;
    await forgetDraft(draft().key);
    kept.delete(draft().key);
  }
  fill();
  await show();
}

async function correct(entry) {
  const key = keyOf(entry.block, entry.kind);
  const corrected = { key, ...draftOf(entry, lengthUnit), replaces: entry.state === "refused" ? entry.replaces : entry.entryId, correctingAt: entry.enteredAt };
  if (entry.state === "refused") {
    await outbox.forget(entry.entryId);
  }
  kept.set(key, corrected);
  await keepDraft(corrected);
  await openAndShow(entry.block, entry.kind);
}

async function withdraw(entry) {
  await outbox.keep({
    entryId: newId(), kind: "withdrawal", block: entry.block, replaces: entry.entryId, takenBy: entry.takenBy, enteredAt: new Date().toISOString(),
  });
  await show();
  await outbox.send();
}

async function forget(entry) {
  await outbox.forget(entry.entryId);
  await show();
}

function showTake() {
  const { leaves = [], baggedAt, correctingAt, correctedLeaf } = draft();
  const [chamber, measure] = [open.kind === "chamber", field("measure").value];
  document.getElementById("take-title").textContent = block().name;
  document.getElementById("about-line").textContent = [say(`kind.${open.kind}`), chamber ? say(`measure.${measure}`) : "", who.value.trim()].filter(Boolean).join(" · ");
  // The name stays where it is missing, or being typed.
  who.parentElement.hidden = !about.open && who.value.trim() !== "" && document.activeElement !== who;
  document.getElementById("take-state").textContent = correctingAt ? say("correcting", clock(correctingAt)) : "";
  form.querySelectorAll("[data-kind]").forEach((part) => (part.hidden = part.dataset.kind !== open.kind));
  document.getElementById("measure-hint").textContent = say(`hint.${measure}`);
  document.getElementById("bag").hidden = measure !== "stem";
  const minutes = baggedAt ? Math.floor((Date.now() - Date.parse(baggedAt)) / 60000) : 0;
  document.getElementById("bag-line").textContent = !baggedAt ? "" : say(minutes < SHORTEST_BAG_MIN ? "inBag" : minutes < GOOD_BAG_MIN ? "bagReady" : "bagGood", minutes);
  document.getElementById("measure-answers").hidden = !asked;
  document.getElementById("measure-asked").textContent = asked ? say("otherMeasure", leafCount(leaves.length), say(`measure.${measure}`)) : "";
  if (asked) {
    document.getElementById("measure-new").textContent = say("beginSet", say(`measure.${asked}`));
    document.getElementById("measure-change").textContent = say("changeMeasure", say(`measure.${asked}`));
    document.getElementById("measure-keep").textContent = say("keepMeasure", say(`measure.${measure}`));
  }
  document.getElementById("pressure-unit").textContent = unit();
  const corrects = correctedLeaf !== undefined;
  document.getElementById("add-leaf").textContent = corrects ? say("changeLeaf", correctedLeaf + 1) : say("addLeaf", leaves.length + 1);
  document.getElementById("leaf-answers").hidden = !corrects;
  document.getElementById("remove-leaf").textContent = corrects ? say("removeLeaf", correctedLeaf + 1) : "";
  document.getElementById("bring-leaf-back").hidden = removed === null;
  document.getElementById("bring-leaf-back").textContent = removed ? say("bringLeafBack", shown(removed.leaf.tensionBar, unit()), unit()) : "";
  document.getElementById("save").textContent = say(`save.${open.kind}`);
  document.getElementById("leaves-title").hidden = leaves.length === 0;
  document.getElementById("standard").hidden = field("soilAs").value !== "count";
  document.getElementById("discard").textContent = say(discarded ? "bringBack" : "discard");
  document.getElementById("discard").hidden = !discarded && !kept.has(draft().key);
  showRunning(chamber ? tensions() : []);
}

/** The same buttons are written anew, so that none goes from under a finger. */
function showLeaves(values, far) {
  while (leavesList.children.length > values.length) {
    leavesList.lastElementChild.remove();
  }
  values.forEach((bar, i) => {
    const button = leavesList.children[i]?.firstElementChild ?? leafButton(i);
    button.textContent = say("leaf", i + 1, shown(bar, unit()), unit()) + (far.includes(i) ? ` · ${say("farMark")}` : "");
    button.setAttribute("aria-pressed", String(i === draft().correctedLeaf));
  });
}

function leafButton(at) {
  const [item, button] = ["li", "button"].map((name) => document.createElement(name));
  button.type = "button";
  button.addEventListener("click", () => correctLeaf(at));
  item.append(button);
  leavesList.append(item);
  return button;
}

function showRunning(values) {
  const far = outliers(values, numbers);
  showLeaves(values, far);
  const line = document.getElementById("running");
  if (values.length === 0) {
    line.textContent = "";
    return;
  }
  // A leaf that does not belong to the others is read again; it asks for no further leaves.
  const sound = values.filter((_, i) => !far.includes(i));
  const missing = leavesWanted(sound, block(), numbers) - sound.length;
  const precision = shown(numbers.halfWidthBar, unit());
  const now = values.length === 1
    ? say("runningOne", shown(values[0], unit()), unit())
    : say("running", shown(mean(values), unit()), shown(halfWidth(values, numbers.t), unit()), shown(spread(values), unit()), unit());
  const wanted = missing > 1 ? say("moreLeaves", missing, precision, unit()) : missing === 1 ? say("oneMoreLeaf", precision, unit()) : say("enough", precision, unit());
  line.textContent = `${now} · ${far.length === 0 ? wanted : say("readAgain", far.map((i) => i + 1).join(", "), wanted)}`;
  line.dataset.missing = String(Math.max(0, missing));
}

function showCards(all) {
  const replaced = new Set(all.map((e) => e.replaces));
  for (const state of document.querySelectorAll("[data-state-of]")) {
    const code = state.dataset.stateOf;
    state.dataset.words ??= state.textContent;
    const begun = kept.get(keyOf(code, "chamber"));
    const entry = all.filter((e) => e.block === code && e.kind === "chamber" && !replaced.has(e.entryId)).at(-1);
    state.dataset.state = begun ? "" : entry?.state ?? "";
    state.textContent = begun?.leaves?.length ? say("draft", leafCount(begun.leaves.length)) : begun ? say("draftOther") : entry ? stateOf(entry, unit()) : state.dataset.words;
  }
}

/** What is begun and not saved, in words. */
function unsaved() {
  return [...kept.values()].map(({ key, leaves = [] }) => [key.split("|")[0], leaves.length])
    .map(([code, leaves]) => (leaves > 0 ? say("unsavedLeaves", code, leafCount(leaves)) : say("unsaved", code)));
}

async function show() {
  const all = await outbox.entries();
  showOutbox(summary, all, unsaved());
  showCards(all);
  showMine(document.getElementById("mine"), all, unit(), { correct, withdraw, forget });
  showWindow(document.getElementById("window-clock"));
  if (open) {
    showTake();
  }
}

function switchKind() {
  openBlock(open.block, field("kind").value);
  return show();
}

function onInput(event) {
  if (event.target.name === "unit") {
    localStorage.setItem(UNIT_KEY, unit());
    return show();
  }
  if (event.target.name === "kind") {
    return switchKind();
  }
  if (event.target.name === "measure" && asksFirst(event.target.value)) {
    return show();
  }
  if (event.target.name === "soilAs") {
    fillDepths(depthRows());
  }
  return typed();
}

rememberName(who);
field("unit").value = localStorage.getItem(UNIT_KEY) ?? unit();
form.addEventListener("input", onInput);
form.addEventListener("submit", (event) => {
  event.preventDefault();
  save();
});
about.addEventListener("toggle", show);
field("pressure").addEventListener("keydown", (event) => {
  if (event.key === "Enter") {
    event.preventDefault();
    addLeaf();
  }
});
field("tube").addEventListener("change", () => {
  const chosen = tube(field("tube").value);
  if (chosen && depthRows().every(([, value]) => value.trim() === "")) {
    field("soilAs").value = chosen.counts ? "count" : "content";
    fillDepths(depthsOf(chosen));
    typed();
  }
});
const onClick = (id, work) => document.getElementById(id).addEventListener("click", work);
onClick("add-leaf", addLeaf);
onClick("keep-leaf", keepLeaf);
onClick("remove-leaf", removeLeaf);
onClick("bring-leaf-back", bringLeafBack);
onClick("measure-new", () => beginSet(asked));
onClick("measure-change", () => changeMeasure(asked));
onClick("measure-keep", keepMeasure);
onClick("bag-now", () => change({ baggedAt: new Date().toISOString() }));
onClick("add-depth", () => {
  document.getElementById("depths").append(depthRow("", ""));
  document.querySelector("#depths .depth:last-child input").focus();
});
onClick("discard", discard);
onClick("back", leave);
onClick("open-other", () => document.getElementById("other").value && openAndShow(document.getElementById("other").value));
document.querySelectorAll("[data-open]").forEach((button) => button.addEventListener("click", () => openAndShow(button.dataset.open)));
addEventListener("popstate", () => open && !history.state?.take && close());

// A set that was begun when the browser was closed is open again.
const last = JSON.parse(localStorage.getItem(OPEN_KEY) ?? "null");
if (last && blocks.has(last.block)) {
  openBlock(last.block, last.kind);
}
showKept(document.getElementById("kept-line"));
await show();
document.documentElement.dataset.outbox = "ready";
setInterval(show, TICK_MS);
outbox.sendWhenPossible();
await keepPage("readings");
