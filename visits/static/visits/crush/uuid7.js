/* Ids made on the phone: UUID version 7 (RFC 9562, section 5.7), rising even within one millisecond and when the
   phone's clock is set back (section 6.2, method 1: the 12 bits after the time are a counter). */

const TOP = 0xfff;
let lastTime = 0;
let counter = 0;

/** @returns {string} a new id, greater than every one made before on this page */
export function uuid7(now = Date.now()) {
  step(now);
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  for (let place = 0; place < 6; place += 1) bytes[place] = Math.floor(lastTime / 2 ** (40 - 8 * place)) % 256;
  bytes[6] = 0x70 | (counter >> 8);
  bytes[7] = counter & 0xff;
  bytes[8] = 0x80 | (bytes[8] & 0x3f);
  return written(bytes);
}

function step(now) {
  if (now > lastTime) {
    lastTime = now;
    // The upper bit is left clear, so that at least 2,048 more fit in before the time itself has to be raised.
    counter = crypto.getRandomValues(new Uint16Array(1))[0] & (TOP >> 1);
    return;
  }
  counter += 1;
  if (counter <= TOP) return;
  lastTime += 1;
  counter = 0;
}

function written(bytes) {
  const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join("-");
}
