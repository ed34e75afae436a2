import { clockAt, now } from "../field/clock.js";
import { newId, Outbox } from "../field/outbox.js";
import { keepPage, rememberName, showKept, showOutbox, storeOnce } from "../field/page.js";
import { clock, say, told, toldClock } from "../field/words.js";
import { drafts, forgetDraft, keepDraft } from "./drafts.js";
import { checked, doubts } from "./form.js";
import { showLeftOver } from "./left-over.js";
import { asTyped, meterSize } from "./meter.js";
import { small } from "./photo.js";
import { hoursBetween } from "./times.js";

const TICK_MS = 20000;
const METER = ["before", "after", "meter"];
const FIELDS = ["opened", "hours", ...METER, "note", "words"];

const summary = document.getElementById("outbox-line");
const who = document.getElementById("who");
const forms = [...document.querySelectorAll("form[data-set]")];
const outbox = new Outbox({ name: "estate-water-sets", endpoint: "api/confirmations", shown: show });
const kept = await drafts();

const stateOf = (form) => document.getElementById(`state-${form.dataset.set}`);
const draftOf = (form) => kept.get(form.dataset.set) ?? { setId: form.dataset.set, fields: {} };
const field = (form, name) => form.elements.namedItem(name);

async function change(form, values) {
  const draft = { ...draftOf(form), valve: form.dataset.valve, ...values };
  kept.set(draft.setId, draft);
  try {
    await keepDraft(draft);
  } catch (error) {
    summary.textContent = say("cannotStore", error.message);
  }
  await show();
}

const typed = (form) => change(form, { fields: { ...Object.fromEntries(FIELDS.map((n) => [n, field(form, n).value])), reason: field(form, "reason").value }, meterSize });

function fill(form, values) {
  for (const name of FIELDS.filter((n) => values[n] !== undefined && values[n] !== null)) {
    field(form, name).value = String(values[name]);
  }
  if (values.reason) {
    field(form, "reason").value = values.reason;
  }
}

/** What was typed before the page changed its unit is shown in the new one. */
function inPageUnit({ fields, meterSize: then }) {
  const moved = (text) => asTyped(Number(text.replace(",", ".")) * then);
  return then === undefined || then === meterSize ? fields : { ...fields, ...Object.fromEntries(METER.filter((n) => Number(fields[n]?.replace(",", "."))).map((n) => [n, moved(fields[n])])) };
}

/** The clock time with which the form begins: as planned, unless that is still ahead. */
function openedAsPlanned(form) {
  if (field(form, "opened").value === "" && Date.parse(form.dataset.start) <= now()) {
    field(form, "opened").value = clockAt(Date.parse(form.dataset.start), form.dataset.start);
  }
}

async function start(form) {
  await change(form, { tappedAt: new Date().toISOString(), startedAt: new Date(now()).toISOString(), stoppedAt: null });
}

async function stop(form) {
  const draft = draftOf(form);
  const stoppedAt = new Date().toISOString();
  fill(form, { opened: clockAt(Date.parse(draft.startedAt), form.dataset.start), hours: hoursBetween(draft.tappedAt, stoppedAt) });
  await change(form, { stoppedAt });
  await typed(form);
  form.querySelector(".set-keep").focus();
}

async function takePhoto(form) {
  const [file] = field(form, "photo").files;
  const line = document.getElementById(`photo-kept-${form.dataset.set}`);
  try {
    await change(form, { photo: file ? await small(file) : null });
  } catch (error) {
    console.info(`The picture could not be made small: ${error}`);
    line.textContent = say("photoBad");
  }
}

/** A mistake may be in what is folded away. */
function showMistake(form) {
  const wrong = form.querySelector("[aria-invalid=true]");
  if (wrong) {
    form.querySelector(".set-other").open = true;
    wrong.focus();
  }
}

async function save(form, couldNot) {
  const draft = draftOf(form);
  const values = checked(form, couldNot, who, draft.startedAt);
  if (values === null || form.dataset.saving) {
    showMistake(form);
    return;
  }
  const isStored = await storeOnce(form, summary, async () => {
    const confirmedBy = who.value.trim();
    await outbox.keep({
      entryId: newId(),
      setId: Number(form.dataset.entrySet),
      ...values,
      confirmedBy,
      replaces: draft.replaces ?? null,
      enteredAt: new Date().toISOString(),
      ...(draft.photo ? { photo: draft.photo } : {}),
    });
    await forgetDraft(form.dataset.set);
    kept.delete(form.dataset.set);
    form.reset();
    form.querySelectorAll("details").forEach((part) => (part.open = false));
  });
  if (isStored) {
    await show();
    await outbox.send();
  }
}

function said(entry) {
  const what = entry.hours === 0 ? [say("couldNot"), entry.notRun ? say(`reason.${entry.notRun}`) : "", entry.note].filter(Boolean).join(": ") : `${told(entry.hours)} h`;
  const photo = { waiting: say("photoWaits"), sent: say("photoSent"), refused: say("photoRefused", entry.photoProblem ?? "") }[entry.photoState ?? (entry.photo ? "waiting" : "")];
  const state = { sent: () => say("sentAt", clock(entry.sentAt)), refused: () => say("notTaken", entry.problem) }[entry.state] ?? (() => say("savedAt", clock(entry.enteredAt)));
  return [state(), entry.state === "refused" ? "" : what, photo].filter(Boolean).join(" · ");
}

/** The set's last entry of this phone, unless the server's page tells of it already. */
function latestOf(all, form) {
  const known = stateOf(form).dataset.entries.split(" ");
  const mine = all.filter((e) => [form.dataset.set, form.dataset.entrySet].includes(String(e.setId)));
  const last = mine.at(-1);
  return last && !(last.state === "sent" && known.includes(last.entryId)) ? last : undefined;
}

function showForm(form, all) {
  const state = stateOf(form);
  const entry = latestOf(all, form);
  const draft = draftOf(form);
  const settled = (state.dataset.confirmed === "true" || entry !== undefined) && !draft.replaces && !draft.tappedAt;
  state.dataset.words ??= state.textContent;
  const phase = draft.stoppedAt ? "stopped" : draft.tappedAt ? "running" : draft.replaces ? "correcting" : "idle";
  form.dataset.phase = phase;
  form.hidden = settled;
  form.parentElement.querySelector(".set-correct").hidden = !settled || entry?.state === "refused";
  form.nextElementSibling.hidden = entry?.state !== "refused";
  state.dataset.state = entry?.state ?? "";
  state.textContent = phase === "running" ? say("running", toldClock(clockAt(Date.parse(draft.startedAt), form.dataset.start)), told(hoursBetween(draft.tappedAt, new Date().toISOString()).toFixed(1)))
    : phase === "stopped" ? say("stopped", told(hoursBetween(draft.tappedAt, draft.stoppedAt)))
    : entry ? said(entry)
    : state.dataset.words;
  const isTold = phase === "stopped" || phase === "correcting" || (phase === "idle" && kept.has(form.dataset.set));
  const hint = !settled && (phase === "running" || isTold) ? doubts(form, draft.startedAt, isTold) : "";
  const line = document.getElementById(`hint-${form.dataset.set}`);
  if (line.textContent !== hint) {
    line.textContent = hint; // Said once, not at every tick.
  }
  document.getElementById(`photo-kept-${form.dataset.set}`).textContent = draft.photo ? say("photoKept", Math.ceil(draft.photo.size / 1024)) : "";
}

async function show() {
  const all = await outbox.entries();
  forms.forEach((form) => showForm(form, all));
  const shown = new Set(forms.flatMap((form) => [form.dataset.set, form.dataset.entrySet]));
  showLeftOver(document.getElementById("left-over"), { shown, entries: all, drafts: [...kept.values()], said, forget });
  showOutbox(summary, all, unsaved());
}

async function forget({ draft, entry }) {
  if (draft) {
    await forgetDraft(draft.setId);
    kept.delete(draft.setId);
  } else {
    await outbox.forget(entry.entryId);
  }
  await show();
}

/** What only this phone knows and has not even saved, in words. */
function unsaved() {
  const begun = forms.filter((form) => !form.hidden && kept.has(form.dataset.set));
  const [running, typedOnly] = [true, false].map((runs) => begun.filter((form) => (form.dataset.phase === "running") === runs).map((form) => form.dataset.valve).join(", "));
  return [running && say("onlyRunning", running), typedOnly && say("onlyTyped", typedOnly)].filter(Boolean);
}

/** Opens the form again to correct what counts: what this phone entered last, or what the server's page tells. */
async function correct(form) {
  const entry = latestOf(await outbox.entries(), form);
  if (entry) {
    fill(form, { opened: entry.startedAt ? clockAt(Date.parse(entry.startedAt), form.dataset.start) : "", hours: entry.hours || "", before: asTyped(entry.meterBeforeM3), after: asTyped(entry.meterAfterM3), meter: asTyped(entry.meterM3), note: entry.note });
  }
  openedAsPlanned(form);
  form.querySelector(".set-other").open = true;
  await change(form, { replaces: entry?.entryId ?? stateOf(form).dataset.entry });
  field(form, "hours").focus();
}

function wire(form) {
  const on = (selector, work) => form.parentElement.querySelector(selector).addEventListener("click", () => work(form));
  on(".set-start", start);
  on(".set-stop", stop);
  on(".set-correct", correct);
  field(form, "photo").addEventListener("change", (event) => { event.stopPropagation(); takePhoto(form); });
  form.addEventListener("change", (event) => event.target.type === "file" || typed(form));
  form.addEventListener("input", (event) => event.target.type === "file" || typed(form));
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    save(form, event.submitter?.value === "could-not");
  });
  form.nextElementSibling.addEventListener("click", async () => {
    const refused = (await outbox.entries()).filter((e) => String(e.setId) === form.dataset.entrySet && e.state === "refused");
    await Promise.all(refused.map((e) => outbox.forget(e.entryId)));
    location.reload();
  });
  fill(form, inPageUnit(draftOf(form)));
  form.querySelector(".set-other").open = Boolean(draftOf(form).replaces);
  openedAsPlanned(form);
}

if (who) {
  rememberName(who);
}
forms.forEach(wire);
showKept(document.getElementById("kept-line"));
await show();
document.documentElement.dataset.outbox = "ready";
setInterval(show, TICK_MS);
outbox.sendWhenPossible();
await keepPage("sets");
