// What is not saved yet: a set's start, its stop, and what was typed.

import { draftsIn } from "../field/store.js";

export const { drafts, keepDraft, forgetDraft } = draftsIn("estate-water-sets-drafts", "setId");
