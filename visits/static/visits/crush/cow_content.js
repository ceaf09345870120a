/* What is written of a cow when she is kept. */
import { bandOff } from "./crush_clock.js";
import { emptyFoot, isTouched, trimmed, withFoot } from "./entry.js";

/** The content to be written: feet taken for trimmed put in, the time in the crush counted. */
export function finished(standing) {
  const draft = bandOff(standing);
  const { entry } = draft.content;
  const untouched = draft.rest.filter((name) => !entry.feet.some((foot) => foot.foot === name));
  const lifted = entry.feet.filter((foot) => isTouched(foot));
  const whole = untouched.reduce((sum, name) => withFoot(sum, trimmed(emptyFoot(name))), { ...entry, feet: lifted });
  const seconds = draft.started_at ? secondsSince(draft.started_at) : entry.crush_seconds;
  return { ...draft.content, entry: { ...whole, crush_seconds: seconds } };
}

/** Longer than this she was not in the crush: the page was left open. */
const LONGEST_SECONDS = 3 * 3600;

function secondsSince(iso) {
  const seconds = Math.round((Date.now() - Date.parse(iso)) / 1000);
  return seconds >= 0 && seconds <= LONGEST_SECONDS ? seconds : null;
}
