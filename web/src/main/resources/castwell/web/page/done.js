// Says what was done on the page that comes next, with its undo.
import {write} from './api.js';
import {attempt} from './bar.js';
import {want} from './fresh.js';

const KEY = 'castwell.done';

/**
 * Remembers what was done over a change of page. `undo` is {send: 'POST /path', body}, or nothing
 * when it can't be undone.
 */
export function told(words, undo) {
  sessionStorage.setItem(KEY, JSON.stringify({words, undo}));
}

/** Says what was done before the change of page, once. */
export function sayWhatWasDone() {
  const done = JSON.parse(sessionStorage.getItem(KEY) ?? 'null');
  sessionStorage.removeItem(KEY);
  if (!done) return;
  const [method, path] = done.undo?.send.split(' ') ?? [];
  attempt(async () => {}, done.words, done.undo ? () => write(method, path, done.undo.body).then(want) : null);
}
