// What every page used outdoors does: says what waits to be sent, and keeps itself for the next time without signal.

import { lastAccess } from "./outbox.js";
import { clock, say } from "./words.js";

const NAME_KEY = "estate-water-name";

/** Under whose name entries are taken: whoever signed in; others type their name once on this phone. */
export function rememberName(who) {
  if ("signedIn" in who.dataset) {
    return;
  }
  who.value = localStorage.getItem(NAME_KEY) ?? "";
  who.addEventListener("input", () => localStorage.setItem(NAME_KEY, who.value.trim()));
}

/** Stores what a form says; a second tap meanwhile is the same tap. True once it is safely stored, false after saying why not. */
export async function storeOnce(form, summary, store) {
  form.dataset.saving = "1";
  try {
    await store();
    await navigator.storage?.persist?.();
    return true;
  } catch (error) {
    summary.textContent = say("cannotStore", error.message);
    return false;
  } finally {
    delete form.dataset.saving;
  }
}

/** Shows a mistake under its input, or takes it away when the message is empty; true when there is none. */
export function showError(input, message) {
  const error = document.getElementById(input.getAttribute("data-error"));
  error.textContent = message;
  error.hidden = message === "";
  input.setAttribute("aria-invalid", message === "" ? "false" : "true");
  if (message !== "") {
    input.focus();
  }
  return message === "";
}

/** Says how many entries wait, what is not even saved, and when the last was sent. unsaved: in words, one each. */
export function showOutbox(line, entries, unsaved) {
  const waiting = entries.filter((e) => e.state === "waiting");
  const lastSent = entries.map((e) => e.sentAt ?? "").sort().at(-1);
  const count = waiting.length === 0 ? (unsaved.length === 0 ? say("nothingWaits") : "") : waiting.length === 1 ? say("oneWaits") : say("manyWait", waiting.length);
  const words = [...unsaved, count, waiting.length > 0 ? say("oldest", clock(waiting[0].enteredAt)) : "", lastSent ? say("lastSent", clock(lastSent)) : ""];
  line.textContent = words.filter(Boolean).join(" · ");
  line.toggleAttribute("data-unsaved", unsaved.length > 0);
  line.dataset.waiting = String(waiting.length);
  if (waiting.length > 0 && lastAccess() !== "open") {
    line.append(" · ", signInLink());
  }
}

function signInLink() {
  const link = document.createElement("a");
  link.href = `/sign-in?return=${encodeURIComponent(location.pathname)}`;
  link.textContent = say(lastAccess() === "signIn" ? "signInToSend" : "signInAsOther");
  return link;
}

/** Says that the page comes from the phone, when it does. */
export function showKept(line) {
  const kept = document.documentElement.dataset.kept;
  if (kept) {
    line.textContent = say("keptAt", clock(kept));
    line.hidden = false;
    addEventListener("online", () => line.replaceChildren(`${say("keptOld", clock(kept))} `, Object.assign(document.createElement("a"), { href: location.pathname, textContent: say("loadAgain") })));
  }
}

/** Keeps this page, its styles and scripts for the next time without signal. scope: the page's path, like /sets. */
export async function keepPage(scope) {
  if (!("serviceWorker" in navigator)) {
    return;
  }
  await navigator.serviceWorker.register(new URL("sw.js", import.meta.url), { scope: new URL(scope, document.baseURI).pathname });
  const { active } = await navigator.serviceWorker.ready;
  const parts = performance.getEntriesByType("resource").map((r) => r.name).filter((n) => n.startsWith(location.origin) && !n.includes("/api/"));
  active.postMessage({ keep: [location.href, ...parts] });
}
