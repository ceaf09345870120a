/* The rules of the trade on the phone: each the twin of a Python rule, held equal by tests/browser/test_phone_rules.py.
   They work on an `entry` in wire shape and the papers of the visit. */

export { refusals, soreClaws, trimKind } from "./rules_trim.js";
export { doubts } from "./rules_doubts.js";
export { referrals } from "./rules_referral.js";
export { rechecksFor } from "./rules_recheck.js";
export { lesionOf, lesionsAt } from "./rules_lesions.js";
export { materials, visitMaterials, washMaterial } from "./rules_kit.js";
export { fourFeet, lookedAt, proposedActions, usualBlock } from "./rules_propose.js";
export { checkDigit, earTagHint, electronicIdHint } from "./rules_tags.js";
export { cowsLike, isKnownAs } from "./rules_cows.js";
export { isLame, isVeryLame, scaleOf } from "./rules_feet.js";
