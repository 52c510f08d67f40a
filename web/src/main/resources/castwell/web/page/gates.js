// The gates page: what is well and what isn't, and the light at the gates while somebody aligns
// them.
import {readHealth, readStations} from './api.js';
import {arrange, byId, el, setText} from './dom.js';
import {clockTime, figure} from './format.js';
import {beginAnew, showLight} from './light.js';
import {showLink} from './link.js';
import {follow} from './live.js';
import {chosenStation, settleOn, showStations} from './stations.js';
import {text} from './text.js';

const LOOK_AGAIN_MS = 10000;
// These are the API's words for how well something is, the worst first.
const LEVELS = {
  bad: {shape: '✕', words: text('live.gates.bad')},
  attention: {shape: '▲', words: text('live.gates.attention')},
  "can't tell": {shape: '?', words: text('live.gates.cant_tell')},
  well: {shape: '●', words: text('live.gates.well')},
};
const WORST_FIRST = Object.keys(LEVELS);

let stations = [];
let station = '';
let lastRequest = 0;
const lost = {};

async function refetch() {
  const request = ++lastRequest;
  try {
    stations = await readStations();
    const chosen = (stations.find((s) => s.station === chosenStation()) ?? stations[0]).station;
    const health = await readHealth(chosen);
    if (request !== lastRequest) return;
    connected('answers', true);
    lookAt(chosen);
    showStations(stations, station, refetch);
    showLink(stations, station, Date.parse(health.at));
    if (stations.find((s) => s.station === station).state !== 'online') showLight(null);
    setText(byId('asked'), text('live.gates.asked', station, LEVELS[health.level].words, clockTime(health.at)));
    arrange(byId('items'), worstFirst(health.items).map(row));
  } catch {
    connected('answers', false);
  }
}

// Each station has its own best marks, so they begin anew with another station.
function lookAt(chosen) {
  if (chosen === station) return;
  station = chosen;
  if (stations.length > 1) settleOn(station);
  showLight(null);
  beginAnew();
}

function worstFirst(items) {
  return [...items].sort((a, b) => WORST_FIRST.indexOf(a.level) - WORST_FIRST.indexOf(b.level));
}

function row({title, level, sentence, remedy, measured}) {
  const {shape, words} = LEVELS[level];
  const word = el('b', {}, el('span', {class: 'shape', 'aria-hidden': 'true'}, shape), ` ${words}`);
  const rows = [el('h3', {}, title, word), el('p', {}, sentence)];
  if (measured) rows.push(el('p', {class: 'quiet'}, measuredText(measured)));
  if (level !== 'well') rows.push(el('p', {class: 'remedy'}, `→ ${remedy}`));
  return el('li', {'data-level': level}, ...rows);
}

function measuredText({value, unit, u, n}) {
  const told = figure(value, u, Number.isInteger(value) ? 0 : 3);
  const known = `${told.value}${told.u ? ` ± ${told.u}` : ''} ${unit}`;
  return n === null ? known : `${known} · n = ${n}`;
}

function onEvent(kind, data) {
  if (kind === 'light' && data.station === station) showLight(data);
  if (kind === 'link' || kind === 'store') refetch();
}

function connected(way, yes) {
  lost[way] = !yes;
  const isLost = Object.values(lost).includes(true);
  byId('lost').hidden = !isLost;
  byId('link').hidden = isLost;
  if (isLost) showLight(null);
}

byId('anew').addEventListener('click', beginAnew);
window.addEventListener('popstate', refetch);
document.addEventListener('visibilitychange', () => document.hidden || refetch());
setInterval(refetch, LOOK_AGAIN_MS);
showLight(null);
follow(null, {event: onEvent, connected: (yes) => {
  connected('feed', yes);
  if (yes) refetch();
}}, '&light=1');
refetch();
