// What is not saved yet, by block and kind. Kept on the phone at every change, so that closing the browser loses nothing.

import { inStore } from "../field/store.js";

const PLACE = { database: "estate-water-readings-drafts", store: "drafts", key: "key" };

export const keyOf = (block, kind) => `${block}|${kind}`;

/** All drafts, by key. */
export const drafts = async () => new Map((await inStore(PLACE, "readonly", (store) => store.getAll())).map((d) => [d.key, d]));

/** Keeps a draft; resolves once it is safely stored. */
export const keepDraft = (draft) => inStore(PLACE, "readwrite", (store) => store.put(draft));

/** Forgets a draft. */
export const forgetDraft = (key) => inStore(PLACE, "readwrite", (store) => store.delete(key));
