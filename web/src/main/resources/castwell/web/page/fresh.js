// Keeps a page's figures fresh: what changed elsewhere is fetched and put in place, nothing else moves. A page that
// slept fetches when it wakes.
import {drawCharts} from './charts.js';
import {byId} from './dom.js';
import {follow} from './live.js';

const KINDS = ['shot', 'tags', 'rack', 'plan', 'refresh'];
const SETTLED_MS = 300;

let timer = 0;
let isFetching = false;
let isWanted = false;

/** Begins to. Parts with `data-fresh` and an id are replaced; one that somebody is filling in is left alone. */
export function keepFresh() {
  if (!document.querySelector('[data-fresh]')) return;
  follow(Number(document.body.dataset.event), {
    event: (kind) => KINDS.includes(kind) && want(),
    connected: (yes) => {
      byId('stale').hidden = yes;
    },
  });
  document.addEventListener('visibilitychange', () => document.hidden || want());
}

/** Fetches the page's figures anew, soon. */
export function want() {
  isWanted = true;
  clearTimeout(timer);
  timer = setTimeout(refetch, SETTLED_MS);
}

async function refetch() {
  if (document.hidden || isFetching || !isWanted) return;
  isFetching = true;
  isWanted = false;
  try {
    const answer = await fetch(location.href, {headers: {Accept: 'text/html'}});
    if (answer.ok) replace(new DOMParser().parseFromString(await answer.text(), 'text/html'));
  } catch {
    isWanted = true; // the live feed says when Castwell is back
  } finally {
    isFetching = false;
    if (isWanted) want();
  }
}

function replace(fresh) {
  for (const part of document.querySelectorAll('[data-fresh]')) {
    const other = fresh.getElementById(part.id);
    if (!other || part.dataset.shown === other.outerHTML || part.contains(filledIn())) continue;
    const wasOpen = [...part.querySelectorAll('details')].map((d) => d.open);
    const shown = other.outerHTML;
    [...other.querySelectorAll('details')].forEach((d, i) => {
      d.open = wasOpen[i] ?? d.open;
    });
    part.replaceWith(other);
    other.dataset.shown = shown;
    drawCharts(other);
  }
}

const filledIn = () => document.activeElement?.closest('form') ?? null;
