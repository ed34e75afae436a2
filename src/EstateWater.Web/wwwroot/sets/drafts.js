// What is not saved yet: a set's start, its stop, and what was typed. Kept on the phone at every change, so that closing the browser loses nothing.

const STORE = "drafts";

function open() {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open("estate-water-sets-drafts", 1);
    request.onupgradeneeded = () => request.result.createObjectStore(STORE, { keyPath: "setId" });
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
      transaction.oncomplete = () => resolve(request.result);
      transaction.onerror = () => reject(transaction.error);
      transaction.onabort = () => reject(transaction.error);
    });
  } finally {
    db.close();
  }
}

/** All drafts, by the number of their set. */
export const drafts = async () => new Map((await inStore("readonly", (store) => store.getAll())).map((d) => [d.setId, d]));

/** Keeps a draft; resolves once it is safely stored. */
export const keepDraft = (draft) => inStore("readwrite", (store) => store.put(draft));

/** Forgets the draft of a set. */
export const forgetDraft = (setId) => inStore("readwrite", (store) => store.delete(setId));
