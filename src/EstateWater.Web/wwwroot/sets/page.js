import { drain, entries, forget, keep, newId } from "./outbox.js";

const FIRST_WAIT_MS = 5000;
const LONGEST_WAIT_MS = 300000;
const NAME_KEY = "estate-water-name";
const MOST_HOURS = 24;

const clock = (iso) => new Date(iso).toLocaleTimeString([], { hour: "2-digit", minute: "2-digit", hour12: false });
const summary = document.getElementById("outbox-line");
const who = document.getElementById("who");
let wait = FIRST_WAIT_MS;
let timer = 0;

/** Reads a number with comma or point; undefined when it is none. */
function number(text) {
  const plain = text.trim().replace(/\s*(h|m3|m³)$/i, "").replace(",", ".");
  return /^\d+(\.\d*)?$|^\.\d+$/.test(plain) ? Number(plain) : undefined;
}

function showError(input, message) {
  const error = document.getElementById(input.getAttribute("data-error"));
  error.textContent = message;
  error.hidden = message === "";
  input.setAttribute("aria-invalid", message === "" ? "false" : "true");
  if (message !== "") {
    input.focus();
  }
  return message === "";
}

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
    await keep({
      entryId: newId(),
      setId: Number(form.dataset.set),
      ...values,
      confirmedBy,
      enteredAt: new Date().toISOString(),
    });
    form.querySelector("details").open = false;
    await navigator.storage?.persist?.();
  } catch (error) {
    summary.textContent = `This phone could not store the entry (${error.message}). Write it down and tell the manager.`;
    return;
  } finally {
    delete form.dataset.saving;
  }
  await show();
  await sendNow();
}

function said(entry) {
  const what = entry.hours === 0 ? `could not run: ${entry.note ?? "0 h"}` : `${entry.hours} h`;
  switch (entry.state) {
    case "sent":
      return `Sent ${clock(entry.sentAt)} · ${what}`;
    case "refused":
      return `Not taken: ${entry.problem}`;
    default:
      return `Saved on this phone ${clock(entry.enteredAt)} · ${what}`;
  }
}

async function show() {
  const all = await entries();
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
  const waiting = all.filter((e) => e.state === "waiting");
  const lastSent = all.map((e) => e.sentAt ?? "").sort().at(-1);
  const words = [
    waiting.length === 0 ? "Nothing waits to be sent" : `${waiting.length} ${waiting.length === 1 ? "entry" : "entries"} waiting`,
    waiting.length > 0 ? `oldest from ${clock(waiting[0].enteredAt)}` : "",
    lastSent ? `last sent ${clock(lastSent)}` : "",
  ];
  summary.textContent = words.filter(Boolean).join(" · ");
  summary.dataset.waiting = String(waiting.length);
}

async function sendNow() {
  clearTimeout(timer);
  const empty = await drain();
  await show();
  wait = empty ? FIRST_WAIT_MS : Math.min(wait * 2, LONGEST_WAIT_MS);
  if (!empty) {
    timer = setTimeout(sendNow, wait);
  }
}

function sendSoon() {
  wait = FIRST_WAIT_MS;
  return sendNow();
}

/** Keeps this page, its styles and scripts for the next time without signal. */
async function keepPage() {
  if (!("serviceWorker" in navigator)) {
    return;
  }
  await navigator.serviceWorker.register(new URL("sw.js", import.meta.url), { scope: new URL("../sets", import.meta.url).pathname });
  const { active } = await navigator.serviceWorker.ready;
  const parts = performance.getEntriesByType("resource").map((r) => r.name).filter((n) => n.startsWith(location.origin) && !n.includes("/api/"));
  active.postMessage({ keep: [location.href, ...parts] });
}

who.value = localStorage.getItem(NAME_KEY) ?? "";
for (const form of document.querySelectorAll("form[data-set]")) {
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    save(form, event.submitter?.value === "could-not");
  });
  form.nextElementSibling.addEventListener("click", async () => {
    const refused = (await entries()).filter((e) => String(e.setId) === form.dataset.set && e.state === "refused");
    await Promise.all(refused.map((e) => forget(e.entryId)));
    location.reload();
  });
}
const kept = document.documentElement.dataset.kept;
if (kept) {
  document.getElementById("kept-line").textContent = `No signal: this list was kept on this phone at ${clock(kept)}.`;
  document.getElementById("kept-line").hidden = false;
}
addEventListener("online", sendSoon);
addEventListener("pageshow", sendSoon);
document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && sendSoon());
await show();
document.documentElement.dataset.outbox = "ready";
sendSoon();
await keepPage();
