// Shows what keeps shots from the disk, or from their right date, in a red bar and in words.
import {byId, el} from './dom.js';
import {text} from './text.js';

let shown = '';

/** Shows the bar while anything is amiss; the same words are not said aloud twice. */
export function showTrouble({stores, clock}) {
  const lines = [...storeLines(stores), ...(clock ? [`▲ ${clock}`] : [])];
  const bar = byId('trouble');
  bar.hidden = !lines.length;
  if (shown === lines.join()) return;
  shown = lines.join();
  bar.replaceChildren(...lines.map((line) => el('p', {}, line)));
}

function storeLines(stores) {
  const refusing = stores.filter((store) => store.trouble !== null);
  if (!refusing.length) return [];
  const waiting = refusing.reduce((sum, store) => sum + store.waiting, 0);
  const isFull = refusing.some((store) => store.full);
  const kept = waiting === 0 ? text('live.trouble.new_in_memory') : text('live.trouble.in_memory', waiting);
  const room = isFull ? [text('live.trouble.full')] : [];
  return [['✕', refusing[0].trouble, kept, ...room].join(' ')];
}
