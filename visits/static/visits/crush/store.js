/* What the phone keeps of the days at the crush. Every function resolves only when it is on the disk (see phone_db.js);
   one that rejects has kept nothing, and the screen must say so. */

export { countWaiting, daysKept, forgetDay } from "./store_counts.js";
export { keepPapers, loadVisit, putBegun, putPhone } from "./store_day.js";
export { onChange } from "./store_news.js";
export { addPhoto, dropPhoto, pictureOf } from "./store_photos.js";
export { addWriting, dropRefused, letGoDraft, putDraft, sendAgain } from "./store_writings.js";
