/* A short sound and a short shake when a tap was kept. Each only where the trimmer has asked for it. */

const PITCH_HZ = 880;
const SECONDS = 0.06;
const SHAKE_MS = 40;

let sound = null;

/**
 * Tell the trimmer that a tap was kept. Call it from the tap itself or soon after: browsers let no page sound on
 * its own. Says nothing until chosen: `is_quiet` and `is_still` must both be switched off by hand.
 * @param {{is_quiet?: boolean, is_still?: boolean}|null} phone the choices kept on this phone
 */
export function tick(phone) {
  if (phone?.is_quiet === false) beep();
  if (phone?.is_still === false) navigator.vibrate?.(SHAKE_MS);
}

/** @returns {boolean} whether this phone can shake at all */
export function canShake() {
  return typeof navigator.vibrate === "function";
}

/** @returns {boolean} whether this phone can sound at all */
export function canSound() {
  return typeof window.AudioContext === "function";
}

/* Made here, so that there is no file to keep on the phone; swelling and fading, or it would crackle. */
function beep() {
  if (!canSound()) return;
  sound ??= new AudioContext();
  if (sound.state === "suspended") sound.resume().catch(() => {});
  const tone = sound.createOscillator();
  const loudness = sound.createGain();
  const now = sound.currentTime;
  tone.frequency.value = PITCH_HZ;
  loudness.gain.setValueAtTime(0, now);
  loudness.gain.linearRampToValueAtTime(0.4, now + SECONDS / 4);
  loudness.gain.linearRampToValueAtTime(0, now + SECONDS);
  tone.connect(loudness).connect(sound.destination);
  tone.start(now);
  tone.stop(now + SECONDS);
}
