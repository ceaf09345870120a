/* The addresses of our own server that the page asks. */

export const WORKER = "/visits/crush-worker.js";
export const SIGN_IN = "/account/login/";

export const papersOf = (visit) => `/visits/${visit}/crush/papers.json`;
export const heardOf = (visit) => `/api/v1/visits/${visit}/heard/`;
export const writingsOf = (visit) => `/api/v1/visits/${visit}/crush/writings/`;

/** Where one photo is sent to, with what the server must know of it; both hours are the phone's own. */
export function photoOf({ visit, uid, record, foot, taken_at }, sent_at) {
  const facts = new URLSearchParams({ record, foot, taken_at, sent_at });
  return `/api/v1/visits/${visit}/crush/photos/${uid}/?${facts}`;
}
