// Keeps a page's figures fresh: what changed elsewhere is fetched and put in place, and nothing
// else moves. A page that slept fetches when it wakes.
import {drawChart} from './charts.js';
import {byId} from './dom.js';
import {follow} from './live.js';
import {morph} from './morph.js';

const KINDS = ['shot', 'tags', 'rack', 'plan', 'refresh'];
const SETTLED_MS = 300;

let timer = 0;
let isFetching = false;
let isWanted = false;

/**
 * Begins to keep the page fresh, if a part of it is marked `data-fresh`. What somebody is filling
 * in is left alone.
 */
export function keepFresh() {
  if (!document.querySelector('[data-fresh]')) return;
  follow(Number(document.body.dataset.event), {
    event: (kind) => KINDS.includes(kind) && want(),
    connected: (yes) => {
      byId('stale').hidden = yes;
      if (yes && isWanted) want();
    },
  });
  document.addEventListener('visibilitychange', () => document.hidden || want());
}

/**
 * Fetches the page's figures anew, soon. However much happens meanwhile, it isn't put off any
 * further.
 */
export function want() {
  isWanted = true;
  timer ||= setTimeout(refetch, SETTLED_MS);
}

async function refetch() {
  timer = 0;
  if (document.hidden || isFetching || !isWanted) return;
  isFetching = true;
  isWanted = false;
  let isAnswered = true;
  try {
    const answer = await fetch(location.href, {headers: {Accept: 'text/html'}});
    if (answer.ok) replace(new DOMParser().parseFromString(await answer.text(), 'text/html'));
  } catch {
    isAnswered = false; // The live feed says when Castwell is back.
  }
  isFetching = false;
  if (!isAnswered) isWanted = true;
  else if (isWanted) want();
}

function replace(fresh) {
  morph(byId('content'), fresh.getElementById('content'), drawChart);
}
