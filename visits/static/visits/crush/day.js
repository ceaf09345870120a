/* The day on this phone: read what is kept, fetch what is newer, send what waits, and keep the screen in step. */
import { stayAwake } from "./awake.js";
import { startSender } from "./sender.js";
import { shownOf } from "./shown.js";
import { loadVisit, onChange } from "./store.js";
import { onNewer } from "./worker_news.js";

/** Fill `app` from the phone and keep it filled. The first screen never waits for the network. */
export async function startDay(app) {
  app.reload = () => reload(app);
  await app.reload();
  if (app.visit !== null && app.kept.phone.keeps_awake) stayAwake(true, app.redraw);
  onChange(() => app.reload().then(app.redraw));
  const onOthers = () => app.reload().then(app.keepUp).then(app.redraw);
  onNewer(() => {
    app.isNewer = true;
    app.redraw();
  });
  const onStatus = (status) => {
    app.status = status;
    app.redraw();
  };
  app.sender = startSender(app.visit, onStatus, onOthers);
}

async function reload(app) {
  app.kept = await loadVisit(app.visit);
  app.papers = app.kept.papers;
  app.shown = shownOf(app.kept.writings);
}
