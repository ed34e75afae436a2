// What is not saved yet, by block and kind.

import { draftsIn } from "../field/store.js";

export const keyOf = (block, kind) => `${block}|${kind}`;

export const { drafts, keepDraft, forgetDraft } = draftsIn("estate-water-readings-drafts", "key");
