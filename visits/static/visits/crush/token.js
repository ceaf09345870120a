/* Django's token against forged requests. It changes with each sign-in, so it also tells one sign-in from another. */

/** @returns {string} "" when there is none yet */
export function sessionToken() {
  return document.cookie.match(/(?:^|;\s*)(?:__Host-)?csrftoken=([^;]+)/)?.[1] ?? "";
}
