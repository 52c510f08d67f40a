// The link's state: whether the station's board answers, and what its gates see.
import {byId, setText} from './dom.js';
import {duration} from './format.js';

// Shape and words carry the meaning; colour only repeats it.
const STATES = {
  online: {shape: '●', words: 'the board answers', short: 'answers'},
  waiting: {shape: '▲', words: 'waiting for the board', short: 'waiting'},
  searching: {shape: '▲', words: 'no board found yet: plug it in', short: 'no board yet'},
  offline: {shape: '✕', words: 'the board is offline', short: 'offline'},
  unplugged: {shape: '✕', words: 'the board is unplugged', short: 'unplugged'},
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
  if (state !== 'online') return since ? `for ${duration((nowMs - Date.parse(since)) / 1000)} now` : '';
  return a && b ? `gate A ${gate(a)}, gate B ${gate(b)}` : '';
}

const gate = (level) => (level === 'blocked' ? '■ blocked' : '□ clear');
