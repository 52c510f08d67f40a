// The link's state: which station is shown, whether its board answers, and what its gates see.
import {arrange, byId, el, setText} from './dom.js';
import {duration} from './format.js';

// Shape and words carry the meaning; colour only repeats it.
const STATES = {
  online: {shape: '●', words: 'the board answers'},
  waiting: {shape: '▲', words: 'waiting for the board'},
  searching: {shape: '▲', words: 'no board found yet: plug it in'},
  offline: {shape: '✕', words: 'the board is offline'},
  unplugged: {shape: '✕', words: 'the board is unplugged'},
};

/** Shows the link of the station that is looked at; `nowMs` is Castwell's own clock. */
export function showLink(stations, current, nowMs) {
  showStations(stations, current);
  const station = stations.find((s) => s.station === current);
  const state = STATES[station?.state] ?? STATES.searching;
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

function showStations(stations, current) {
  const nav = byId('stations');
  nav.hidden = stations.length < 2;
  const buttons = new Map([...nav.children].map((button) => [button.value, button]));
  arrange(nav, stations.map(({station, state}) => {
    const button = buttons.get(station) ?? el('button', {type: 'button', value: station});
    button.setAttribute('aria-pressed', String(station === current));
    setText(button, `${(STATES[state] ?? STATES.searching).shape} ${station}`);
    return button;
  }));
}
