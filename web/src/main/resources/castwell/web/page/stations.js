// Which station is shown, how the others stand, and how to go over to another. The address names
// the station, so that a link or a bookmark leads to the same one; where it names none, the page
// shows the one chosen last.
import {arrange, byId, el, setText} from './dom.js';
import {closeSheet, openSheet} from './sheet.js';
import {stateOf} from './link.js';
import {text} from './text.js';

const KEY = 'castwell.station';
const PARAMETER = 'station';
const MOST_BUTTONS = 4;
const MOST_NAMED = 2;

/**
 * The station that the address or the person's last choice names; '' stands for the first one
 * there is.
 */
export function chosenStation() {
  return new URLSearchParams(location.search).get(PARAMETER) ?? localStorage.getItem(KEY) ?? '';
}

/**
 * Makes the address name the station that is shown, so that it leads there again; '' forgets the
 * one it named.
 */
export function settleOn(name) {
  remember(name);
  history.replaceState(null, '', addressOf(name));
}

function remember(name) {
  localStorage.setItem(KEY, name);
}

function addressOf(name) {
  const address = new URL(location.href);
  if (name) address.searchParams.set(PARAMETER, name);
  else address.searchParams.delete(PARAMETER);
  return address;
}

/** Shows the stations where there are several; `onChosen` is called once another was chosen. */
export function showStations(stations, current, onChosen) {
  const choose = (name) => {
    closeSheet();
    remember(name);
    // Going "back" then leads to the station before.
    if (name !== current) history.pushState(null, '', addressOf(name));
    onChosen();
  };
  const isFew = stations.length <= MOST_BUTTONS;
  byId('stations').hidden = stations.length < 2 || !isFew;
  byId('lanes').hidden = isFew;
  if (isFew) {
    showButtons(stations, current, choose);
    return;
  }
  setText(byId('lane').firstElementChild, current);
  byId('lane').onclick = () => openList(stations, current, choose);
  setText(byId('others'), othersText(stations.filter((other) => other.station !== current)));
}

function showButtons(stations, current, choose) {
  const nav = byId('stations');
  const buttons = new Map([...nav.children].map((button) => [button.value, button]));
  arrange(nav, stations.map((link) => {
    const button = buttons.get(link.station) ?? el('button', {type: 'button', value: link.station});
    button.setAttribute('aria-pressed', String(link.station === current));
    button.onclick = () => choose(link.station);
    setText(button, `${stateOf(link).shape} ${link.station}`);
    return button;
  }));
}

function openList(stations, current, choose) {
  const choices = stations.map((link) => {
    const {shape, short} = stateOf(link);
    return el('button', {type: 'button', class: 'choice', 'aria-pressed': String(link.station === current),
      click: () => choose(link.station)}, el('b', {}, link.station), el('span', {}, `${shape} ${short}`));
  });
  openSheet(text('live.stations.which'), el('div', {class: 'choices'}, ...choices));
}

// Says how the others are: those that are well are counted, and the rest are named as far as there
// is space.
function othersText(others) {
  const kinds = new Map();
  for (const link of others) {
    const {shape, short} = stateOf(link);
    const kind = `${shape} ${short}`;
    kinds.set(kind, [...(kinds.get(kind) ?? []), link.station]);
  }
  const told = [...kinds].sort(([a], [b]) => isWell(a) - isWell(b)).map(([kind, names]) =>
    isWell(kind) ? `${kind}: ${names.length}` : `${kind}: ${namesText(names)}`);
  return text('live.stations.others', told.join(', '));
}

const isWell = (kind) => kind.startsWith(stateOf({state: 'online'}).shape);

function namesText(names) {
  const [first, second] = names;
  if (!second) return first;
  const more = names.length - MOST_NAMED;
  return more > 0 ? text('live.stations.and_more', first, second, more) : text('live.stations.both', first, second);
}
