// What is not saved yet: a set's start, its stop, and what was typed. Kept on the phone at every change, so that closing the browser loses nothing.

import { inStore } from "../field/store.js";

const PLACE = { database: "estate-water-sets-drafts", store: "drafts", key: "setId" };

/** All drafts, by the number of their set. */
export const drafts = async () => new Map((await inStore(PLACE, "readonly", (store) => store.getAll())).map((d) => [d.setId, d]));

/** Keeps a draft; resolves once it is safely stored. */
export const keepDraft = (draft) => inStore(PLACE, "readwrite", (store) => store.put(draft));

/** Forgets the draft of a set. */
export const forgetDraft = (setId) => inStore(PLACE, "readwrite", (store) => store.delete(setId));
