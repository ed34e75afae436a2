// A store of a field page on the phone.

const LAYOUT = 1;

/** Does work in a store of its own database; resolves to the answer once it is safely on the phone. place: { database, store, key }. */
export async function inStore(place, mode, work) {
  const db = await open(place);
  try {
    return await new Promise((resolve, reject) => {
      const transaction = db.transaction(place.store, mode, { durability: "strict" });
      const request = work(transaction.objectStore(place.store));
      // Only a completed transaction is on the phone for good; a successful request is not yet.
      transaction.oncomplete = () => resolve(request.result);
      transaction.onerror = () => reject(transaction.error);
      transaction.onabort = () => reject(transaction.error);
    });
  } finally {
    db.close();
  }
}

function open({ database, store, key }) {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(database, LAYOUT);
    request.onupgradeneeded = () => request.result.createObjectStore(store, { keyPath: key });
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

/** What one page keeps that is not saved yet: kept at every change, so that closing the browser loses nothing. Each draft holds its own key. */
export function draftsIn(database, key) {
  const place = { database, store: "drafts", key };
  return {
    /** All drafts, by key. */
    drafts: async () => new Map((await inStore(place, "readonly", (store) => store.getAll())).map((d) => [d[key], d])),
    /** Keeps a draft; resolves once it is safely stored. */
    keepDraft: (draft) => inStore(place, "readwrite", (store) => store.put(draft)),
    /** Forgets a draft. */
    forgetDraft: (value) => inStore(place, "readwrite", (store) => store.delete(value)),
  };
}
