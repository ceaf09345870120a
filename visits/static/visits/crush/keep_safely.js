/* A tap that writes something down: on the phone first, then on the screen, or said that it was not. */

/**
 * @param {object} app
 * @param {() => Promise<unknown>} write what the store is to do
 * @param {string} words said when it is on the phone
 * @returns {Promise<boolean>} whether it is
 */
export async function keepSafely(app, write, words) {
  try {
    await write();
  } catch (fault) {
    app.say(`Not done: this phone could not write it down (${fault.message}). All stands as it was.`, "urgent");
    return false;
  }
  await app.reload();
  app.tick();
  app.say(words);
  return true;
}
