// The small bar at the foot: it says what was done, with an undo for some seconds, or what went
// wrong.
import {byId, el} from './dom.js';
import {closeSheet} from './sheet.js';
import {text} from './text.js';

const SHOWN_MS = 9000;
let hiding = 0;
let isBusy = false;

/**
 * Does something, then says so with an undo; a refusal is shown in its own words. A second tap
 * meanwhile is ignored.
 */
export async function attempt(action, told, undo) {
  if (isBusy) return;
  isBusy = true;
  try {
    await action();
    closeSheet();
    show(told, undo);
  } catch (refusal) {
    show(refusal.message, null, true);
  } finally {
    isBusy = false;
  }
}

/** Says why nothing was done. */
export const say = (words) => show(words, null, true);

function show(words, undo, isRefusal = false) {
  const bar = byId('bar');
  // A modal dialog covers the rest of the page: while one is open, the bar belongs inside it.
  (document.querySelector('dialog[open]') ?? document.body).append(bar);
  const label = isRefusal ? '▲ ' : '';
  const button = undo
    ? el('button', {type: 'button', click: () => attempt(undo, text('live.bar.undone'), null)}, text('live.bar.undo'))
    : el('button', {type: 'button', click: hide}, text('live.bar.close'));
  bar.replaceChildren(el('span', {role: isRefusal ? 'alert' : 'status'}, label + words), button);
  bar.hidden = false;
  clearTimeout(hiding);
  hiding = setTimeout(hide, SHOWN_MS);
}

function hide() {
  byId('bar').hidden = true;
}
