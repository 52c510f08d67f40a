// The state of the link: whether the station's board answers, and what its gates see.
import {byId, setText} from './dom.js';
import {duration} from './format.js';
import {text} from './text.js';

// Shape and words carry the meaning; colour only repeats it.
const STATES = {
  online: {shape: '●', words: text('live.link.online'), short: text('live.link.online_short')},
  waiting: {shape: '▲', words: text('live.link.waiting'), short: text('live.link.waiting_short')},
  searching: {shape: '▲', words: text('live.link.searching'), short: text('live.link.searching_short')},
  offline: {shape: '✕', words: text('live.link.offline'), short: text('live.link.offline_short')},
  unplugged: {shape: '✕', words: text('live.link.unplugged'), short: text('live.link.unplugged_short')},
};

/** How a link's state is told: by a shape, in words, and in few words. */
export const stateOf = (link) => STATES[link?.state] ?? STATES.searching;

/** Shows the link of the station that is looked at; `nowMs` is Castwell's own clock. */
export function showLink(stations, current, nowMs) {
  const station = stations.find((s) => s.station === current);
  const state = stateOf(station);
  byId('link').dataset.state = station?.state ?? 'searching';
  setText(byId('link-shape'), state.shape);
  setText(byId('link-words'), station?.sentence || state.words);
  setText(byId('link-more'), station ? more(station, nowMs) : '');
}

function more({state, gate_a: a, gate_b: b, since}, nowMs) {
  if (state !== 'online') return since ? text('live.link.since', duration((nowMs - Date.parse(since)) / 1000)) : '';
  return a && b ? text('live.link.gates', levelText(a), levelText(b)) : '';
}

/** Says what a gate sees. */
export const levelText = (level) =>
  (level === 'blocked' ? `■ ${text('live.link.blocked')}` : `□ ${text('live.link.clear')}`);
