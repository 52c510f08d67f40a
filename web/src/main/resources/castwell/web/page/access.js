// Who may do what here. Without the key, the page only watches, and says so.
import {leave, readAccess} from './api.js';
import {attempt, say} from './bar.js';
import {byId} from './dom.js';
import {text} from './text.js';

/** Shows what this browser may do, once. */
export async function showAccess() {
  const access = await readAccess().catch(() => null);
  if (!access) return;
  byId('watching').hidden = access.may_change;
  byId('leave').hidden = !access.entered;
  if (!access.may_change) document.addEventListener('click', onlyWatch, true);
}

// This runs before any button's own listener, so that whatever the button would change stays as it
// is.
function onlyWatch(event) {
  if (!event.target.closest('main button')) return;
  event.preventDefault();
  event.stopPropagation();
  say(text('live.access.watching'));
}

byId('leave').addEventListener('click', () =>
  attempt(() => leave().then(() => location.reload()), text('live.access.out'), null));
