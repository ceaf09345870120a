/* One question to our server, and what its answer means for the day. Never throws. */

import { sessionToken } from "./token.js";

/* A line that is dead is given up after a while; one that is only slow, a byte a millisecond, is waited for. */
const LONGEST_MS = 30_000;
const ANSWER_BYTES = 100_000;

/**
 * @param {string} address @param {{method?: string, body?: BodyInit, type?: string, token?: string}} how `token`: of the sign-in
 *   that it is meant for; under another one it is refused
 * @returns {Promise<{trouble: "" | "no_signal" | "sign_in" | "server" | "not_yours" | "token" | "too_large" | "malformed",
 *   body: object | null, waitMs: number}>}
 */
export async function askServer(address, { method = "GET", body, type = "application/json", token = sessionToken() } = {}) {
  const headers = { Accept: "application/json" };
  if (body !== undefined) Object.assign(headers, { "Content-Type": type, "X-CSRFToken": token });
  try {
    const signal = AbortSignal.timeout(LONGEST_MS + (body?.size ?? body?.length ?? ANSWER_BYTES));
    const options = { method, body, headers, signal, credentials: "same-origin", cache: "no-store" };
    return await meaning(await fetch(address, { ...options, redirect: "manual" }));
  } catch {
    return { trouble: "no_signal", body: null, waitMs: 0 };
  }
}

async function meaning(answer) {
  // A page behind sign-in leads a stranger on to the sign-in page.
  if (answer.type === "opaqueredirect") return { trouble: "sign_in", body: null, waitMs: 0 };
  // Only an answer that came whole counts: a line that breaks in the middle throws here.
  const text = await answer.text();
  const body = parsed(text);
  return { trouble: troubleOf(answer, body), body, waitMs: 1000 * Number(answer.headers.get("Retry-After") ?? 0) || 0 };
}

function parsed(text) {
  try {
    return text ? JSON.parse(text) : null;
  } catch {
    return null;
  }
}

const BY_STATUS = { 401: "sign_in", 404: "not_yours", 410: "not_yours", 413: "too_large" };
const MALFORMED = new Set([400, 409, 415, 422]);

function troubleOf({ ok, status }, body) {
  if (ok) return "";
  if (status === 403) return refusedBecause(body);
  if (MALFORMED.has(status)) return "malformed";
  return BY_STATUS[status] ?? "server";
}

/* 403 has two reasons: a token that is no longer good, a person who may not. */
function refusedBecause(body) {
  return !body || /csrf/i.test(body.detail ?? "") ? "token" : "not_yours";
}
