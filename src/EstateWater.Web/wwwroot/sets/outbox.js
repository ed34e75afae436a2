// Entries wait here, in the phone's own store, until the server gives a receipt that names them.

const STORE = "entries";
const KEEP_SENT_MS = 3 * 24 * 3600 * 1000;
const SEND_TIMEOUT_MS = 20000;
const ENDPOINT = new URL("../api/confirmations", import.meta.url);

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

function open() {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open("estate-water-sets", 1);
    request.onupgradeneeded = () => request.result.createObjectStore(STORE, { keyPath: "entryId" });
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

async function inStore(mode, work) {
  const db = await open();
  try {
    return await new Promise((resolve, reject) => {
      const transaction = db.transaction(STORE, mode, { durability: "strict" });
      const request = work(transaction.objectStore(STORE));
      // Only a completed transaction is on the phone for good; a successful request is not yet.
      transaction.oncomplete = () => resolve(request.result);
      transaction.onerror = () => reject(transaction.error);
      transaction.onabort = () => reject(transaction.error);
    });
  } finally {
    db.close();
  }
}

/** All entries on this phone, oldest first. */
export async function entries() {
  const all = await inStore("readonly", (store) => store.getAll());
  return all.sort((a, b) => a.enteredAt.localeCompare(b.enteredAt));
}

/** Keeps an entry; resolves once it is safely stored. */
export async function keep(entry) {
  await inStore("readwrite", (store) => store.put({ ...entry, state: "waiting" }));
}

/** Forgets an entry that the server refused, after the person has read why. */
export async function forget(entryId) {
  await inStore("readwrite", (store) => store.delete(entryId));
}

/** Sends what waits, oldest first. Resolves to true when nothing waits any more. */
export function drain() {
  // One drainer among all tabs; without locks the server's memory of ids is what keeps an entry single.
  return navigator.locks ? navigator.locks.request("estate-water-sets", sendAll) : sendAll();
}

async function sendAll() {
  await forgetOldSent();
  for (const entry of (await entries()).filter((e) => e.state === "waiting")) {
    const answer = await send(entry);
    if (answer === null) {
      return false;
    }
    await inStore("readwrite", (store) => store.put({ ...entry, ...answer }));
  }
  return true;
}

async function forgetOldSent() {
  const old = Date.now() - KEEP_SENT_MS;
  for (const entry of (await entries()).filter((e) => e.state === "sent" && Date.parse(e.sentAt) < old)) {
    await forget(entry.entryId);
  }
}

/** What became of an entry: sent, refused for a stated reason, or null when it is not known to have arrived. */
async function send(entry) {
  const { entryId, setId, hours, meterM3, confirmedBy, note, enteredAt } = entry;
  try {
    const response = await fetch(ENDPOINT, {
      method: "POST",
      credentials: "same-origin",
      redirect: "error",
      headers: { "Content-Type": "application/json", Accept: "application/json", "X-Estate-Entry": "1" },
      body: JSON.stringify({ entryId, setId, hours, meterM3, confirmedBy, note, enteredAt }),
      signal: AbortSignal.timeout(SEND_TIMEOUT_MS),
    });
    const type = response.headers.get("Content-Type") ?? "";
    if ((response.status === 200 || response.status === 201) && type.includes("application/json")) {
      const receipt = await response.json();
      // A page that answers 200 in place of the server (a hotspot, a sign-in) names no id.
      return receipt.entryId === entryId ? { state: "sent", sentAt: new Date().toISOString() } : null;
    }
    if ([400, 404, 409, 422].includes(response.status) && type.includes("application/problem+json")) {
      const problem = await response.json();
      return { state: "refused", problem: problem.detail ?? problem.title };
    }
    return null;
  } catch (error) {
    console.info(`Entry ${entryId} is not sent yet: ${error}`);
    return null;
  }
}
