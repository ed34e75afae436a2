// Entries wait here, in the phone's own store, until the server gives a receipt that names them.

import { inStore } from "./store.js";

const KEEP_SENT_MS = 3 * 24 * 3600 * 1000;
const SEND_TIMEOUT_MS = 20000;
const FIRST_WAIT_MS = 5000;
const LONGEST_WAIT_MS = 300000;

/** A new id for an entry; also where the browser offers no randomUUID (pages without TLS). */
export function newId() {
  if (crypto.randomUUID) {
    return crypto.randomUUID();
  }
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = (bytes[6] & 0x0f) | 0x40;
  bytes[8] = (bytes[8] & 0x3f) | 0x80;
  const hex = Array.from(bytes, (b) => b.toString(16).padStart(2, "0")).join("");
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join("-");
}

let access = "open";

/** What the server last said to whoever sends: "open", "signIn" when nobody is signed in, "forbidden" when their role may not. */
export const lastAccess = () => access;

/** The outbox of one page: its own store on the phone and its own address on the server. */
export class Outbox {
  #name;
  #endpoint;
  #shown;
  #wait = FIRST_WAIT_MS;
  #timer = 0;

  /**
   * name: of the store on this phone; endpoint: where entries are posted; shown: called after anything changed.
   * An entry has an entryId and an enteredAt; all else that it holds is its body, which is posted as it is,
   * but for a photo (a Blob), which is sent after its entry to the entry's own address.
   */
  constructor({ name, endpoint, shown }) {
    this.#name = name;
    this.#endpoint = new URL(endpoint, document.baseURI);
    this.#shown = shown;
  }

  /** All entries on this phone, oldest first. */
  async entries() {
    const all = await this.#inStore("readonly", (store) => store.getAll());
    return all.sort((a, b) => a.enteredAt.localeCompare(b.enteredAt));
  }

  /** Keeps an entry; resolves once it is safely stored. */
  async keep(entry) {
    await this.#inStore("readwrite", (store) => store.put({ ...entry, state: "waiting" }));
  }

  /** Forgets an entry that the server refused, after the person has read why. */
  async forget(entryId) {
    await this.#inStore("readwrite", (store) => store.delete(entryId));
  }

  /** Sends now, and again by itself until nothing waits. */
  async send() {
    clearTimeout(this.#timer);
    const empty = await this.#drain();
    await this.#shown();
    this.#wait = empty ? FIRST_WAIT_MS : Math.min(this.#wait * 2, LONGEST_WAIT_MS);
    if (!empty) {
      this.#timer = setTimeout(() => this.send(), this.#wait);
    }
  }

  /** Sends whenever the phone may have found its signal. */
  sendWhenPossible() {
    const soon = () => {
      this.#wait = FIRST_WAIT_MS;
      return this.send();
    };
    addEventListener("online", soon);
    addEventListener("pageshow", soon);
    document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && soon());
    return soon();
  }

  /** Sends what waits, oldest first. Resolves to true when nothing waits any more. */
  #drain() {
    // One drainer among all tabs; without locks the server's memory of ids is what keeps an entry single.
    return navigator.locks ? navigator.locks.request(this.#name, () => this.#sendAll()) : this.#sendAll();
  }

  async #sendAll() {
    await this.#forgetOldSent();
    for (const entry of (await this.entries()).filter((e) => e.state === "waiting")) {
      const answer = await this.#post(entry);
      if (answer === null) {
        return false;
      }
      await this.#inStore("readwrite", (store) => store.put({ ...entry, ...answer }));
    }
    for (const { photo, ...entry } of (await this.entries()).filter((e) => e.state === "sent" && e.photo)) {
      const answer = await this.#deliver(entry, photo, `${this.#endpoint}/${entry.entryId}/photo`, "image/jpeg");
      if (answer === null) {
        return false;
      }
      const { state: photoState, problem: photoProblem } = answer;
      await this.#inStore("readwrite", (store) => store.put({ ...entry, photoState, photoProblem }));
    }
    return true;
  }

  async #forgetOldSent() {
    const old = Date.now() - KEEP_SENT_MS;
    for (const entry of (await this.entries()).filter((e) => e.state === "sent" && !e.photo && Date.parse(e.sentAt) < old)) {
      await this.forget(entry.entryId);
    }
  }

  #post(entry) {
    const { state, sentAt, problem, photo, ...body } = entry;
    return this.#deliver(entry, JSON.stringify(body), this.#endpoint, "application/json");
  }

  /** What became of an entry or its photo: sent, refused for a stated reason, or null when it is not known to have arrived. */
  async #deliver(entry, body, address, contentType) {
    try {
      const response = await fetch(address, {
        method: "POST",
        credentials: "same-origin",
        redirect: "error",
        headers: { "Content-Type": contentType, Accept: "application/json", "X-Estate-Entry": "1" },
        body,
        signal: AbortSignal.timeout(SEND_TIMEOUT_MS),
      });
      // The entry stays until someone signs in who may send it.
      access = { 401: "signIn", 403: "forbidden" }[response.status] ?? "open";
      const type = response.headers.get("Content-Type") ?? "";
      if ((response.status === 200 || response.status === 201) && type.includes("application/json")) {
        const receipt = await response.json();
        // A page that answers 200 in place of the server (a hotspot, a sign-in) names no id.
        return receipt.entryId === entry.entryId ? { state: "sent", sentAt: new Date().toISOString() } : null;
      }
      if ([400, 404, 409, 413, 422].includes(response.status) && type.includes("application/problem+json")) {
        const refusal = await response.json();
        return { state: "refused", problem: refusal.detail ?? refusal.title };
      }
      return null;
    } catch (error) {
      console.info(`Entry ${entry.entryId} is not sent yet: ${error}`);
      return null;
    }
  }

  #inStore(mode, work) {
    return inStore({ database: this.#name, store: "entries", key: "entryId" }, mode, work);
  }
}
