// What was done is said on the page that comes next, with its undo.
import {write} from './api.js';
import {attempt} from './bar.js';
import {want} from './fresh.js';

const KEY = 'castwell.done';

/** Remembers it over a change of page. `undo`: {send: 'POST /path', body}, or nothing when it can't be undone. */
export function told(words, undo) {
  sessionStorage.setItem(KEY, JSON.stringify({words, undo}));
}

/** Says it, once. */
export function sayWhatWasDone() {
  const done = JSON.parse(sessionStorage.getItem(KEY) ?? 'null');
  sessionStorage.removeItem(KEY);
  if (!done) return;
  const [method, path] = done.undo?.send.split(' ') ?? [];
  attempt(async () => {}, done.words, done.undo ? () => write(method, path, done.undo.body).then(want) : null);
}
