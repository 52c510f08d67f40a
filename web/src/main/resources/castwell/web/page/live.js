// The live feed: events as they happen, resumed after a break without missing any.

const KINDS = ['shot', 'tags', 'rack', 'plan', 'refresh', 'link', 'store', 'light'];
const REOPEN_MS = 2000;

/**
 * Follows the feed from the event after number `after`, or from now on without one; `more` is
 * added to the request. `on.event(kind, data)` is called for each event, `on.connected(yes)`
 * whenever the connection comes or goes.
 */
export function follow(after, on, more = '') {
  let lastId = after;

  function open() {
    const source = new EventSource(`/api/live?${lastId === null ? '' : `after=${encodeURIComponent(lastId)}`}${more}`);
    source.addEventListener('open', () => on.connected(true));
    source.addEventListener('error', () => {
      on.connected(false);
      if (source.readyState === EventSource.CLOSED) setTimeout(open, REOPEN_MS);
    });
    for (const kind of KINDS) {
      source.addEventListener(kind, (event) => {
        if (event.lastEventId) lastId = event.lastEventId;
        on.event(kind, event.data ? JSON.parse(event.data) : {});
      });
    }
  }

  open();
}
