import { newId, Outbox } from "../field/outbox.js";
import { keepPage, number as plainNumber, showError, showKept, showOutbox } from "../field/page.js";
import { clock, say } from "../field/words.js";

const NAME_KEY = "estate-water-name";
const MOST_HOURS = 24;

const summary = document.getElementById("outbox-line");
const who = document.getElementById("who");
const outbox = new Outbox({ name: "estate-water-sets", endpoint: "api/confirmations", shown: show });

/** Reads a number that may carry its unit. */
const number = (text) => plainNumber(text.replace(/\s*(h|m3|m³)\s*$/i, ""));

function checked(form, couldNot) {
  const [hours, meter, reason] = ["hours", "meter", "reason"].map((name) => form.elements.namedItem(name));
  const run = couldNot ? 0 : number(hours.value);
  const m3 = couldNot || meter.value.trim() === "" ? null : number(meter.value);
  const right = [
    showError(hours, run >= 0 && run <= MOST_HOURS ? "" : "Hours must be between 0 and 24, like 6.5"),
    showError(meter, m3 === null || m3 >= 0 ? "" : "The meter must show 0 m³ or more, like 171.5, or leave it empty"),
    showError(reason, couldNot && reason.value.trim() === "" ? "Say why in a few words, like “pump would not start”" : ""),
    showError(who, who.value.trim() === "" ? "Say who you are, like “Ana”" : ""),
  ].every(Boolean);
  return right ? { hours: run, meterM3: m3, note: couldNot ? reason.value.trim() : null } : null;
}

async function save(form, couldNot) {
  const values = checked(form, couldNot);
  if (values === null || form.dataset.saving) {
    return;
  }
  // A second tap while the first is being stored is the same tap.
  form.dataset.saving = "1";
  try {
    const confirmedBy = who.value.trim();
    localStorage.setItem(NAME_KEY, confirmedBy);
    await outbox.keep({
      entryId: newId(),
      setId: Number(form.dataset.set),
      ...values,
      confirmedBy,
      enteredAt: new Date().toISOString(),
    });
    form.querySelector("details").open = false;
    await navigator.storage?.persist?.();
  } catch (error) {
    summary.textContent = say("cannotStore", error.message);
    return;
  } finally {
    delete form.dataset.saving;
  }
  await show();
  await outbox.send();
}

function said(entry) {
  const what = entry.hours === 0 ? `could not run: ${entry.note ?? "0 h"}` : `${entry.hours} h`;
  switch (entry.state) {
    case "sent":
      return `${say("sentAt", clock(entry.sentAt))} · ${what}`;
    case "refused":
      return say("notTaken", entry.problem);
    default:
      return `${say("savedAt", clock(entry.enteredAt))} · ${what}`;
  }
}

async function show() {
  const all = await outbox.entries();
  const latest = new Map(all.map((entry) => [String(entry.setId), entry]));
  for (const form of document.querySelectorAll("form[data-set]")) {
    const entry = latest.get(form.dataset.set);
    const state = document.getElementById(`state-${form.dataset.set}`);
    const again = form.nextElementSibling;
    form.hidden = state.dataset.confirmed === "true" || entry !== undefined;
    again.hidden = entry?.state !== "refused";
    if (entry !== undefined) {
      state.textContent = said(entry);
      state.dataset.state = entry.state;
    }
  }
  showOutbox(summary, all);
}

who.value = localStorage.getItem(NAME_KEY) ?? "";
for (const form of document.querySelectorAll("form[data-set]")) {
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    save(form, event.submitter?.value === "could-not");
  });
  form.nextElementSibling.addEventListener("click", async () => {
    const refused = (await outbox.entries()).filter((e) => String(e.setId) === form.dataset.set && e.state === "refused");
    await Promise.all(refused.map((e) => outbox.forget(e.entryId)));
    location.reload();
  });
}
showKept(document.getElementById("kept-line"));
await show();
document.documentElement.dataset.outbox = "ready";
outbox.sendWhenPossible();
await keepPage("sets");
