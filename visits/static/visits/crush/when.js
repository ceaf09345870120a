/* Days and hours in words, in the zone of the business. English words whatever the phone's own language. */

/**
 * @param {string} iso an instant
 * @param {string} zone IANA name
 * @returns {string} "14:05"
 */
export function clock(iso, zone) {
  return new Intl.DateTimeFormat("en-GB", { hour: "2-digit", minute: "2-digit", timeZone: zone }).format(new Date(iso));
}

/**
 * @param {string} day "2026-11-25"
 * @returns {string} "Wed 25 Nov"
 */
export function dayWords(day) {
  const date = new Date(`${day}T12:00:00Z`);
  const parts = new Intl.DateTimeFormat("en-GB", { weekday: "short", day: "numeric", month: "short", timeZone: "UTC" });
  return parts.format(date).replace(",", "").replace("Sept", "Sep");
}

/**
 * The day of an instant in that zone.
 * @param {string|Date} instant
 * @param {string} zone
 * @returns {string} "2026-11-25"
 */
export function dayOf(instant, zone) {
  const form = new Intl.DateTimeFormat("en-GB", { year: "numeric", month: "2-digit", day: "2-digit", timeZone: zone });
  const part = Object.fromEntries(form.formatToParts(new Date(instant)).map((p) => [p.type, p.value]));
  return `${part.year}-${part.month}-${part.day}`;
}

/**
 * @param {string} day "2026-11-25"
 * @param {number} days
 * @returns {string} the day so many days later
 */
export function daysAfter(day, days) {
  const date = new Date(`${day}T12:00:00Z`);
  date.setUTCDate(date.getUTCDate() + days);
  return date.toISOString().slice(0, 10);
}

/**
 * "today 14:05" or "Tue 24 Nov 14:05".
 * @param {string} iso an instant
 * @param {string} zone
 * @param {Date} now
 * @returns {string}
 */
export function moment(iso, zone, now = new Date()) {
  const day = dayOf(iso, zone);
  const word = day === dayOf(now, zone) ? "today" : dayWords(day);
  return `${word} ${clock(iso, zone)}`;
}
