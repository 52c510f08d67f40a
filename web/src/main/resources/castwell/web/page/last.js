// The last passage: its speed in digits for five metres, how sure it is, whether it counts, and what follows from it.
import {byId, el, setText} from './dom.js';
import {figure, hintText, remedy, speedFigure, speedText, uncertainty, verdictText, whenText} from './format.js';
import {retagToFit, setAsideAsStray} from './shot.js';
import {text} from './text.js';
import {here, unitFor} from './units.js';

const MM_PER_INCH = 25.4;
const SPEED = 'ft/s';
// The widest usual figure sets the size, so that the digits keep their size from shot to shot.
const WIDEST_USUAL = '888.8';
const NO_SPEED = '– – –';

const FIGURES = [
  {label: text('live.last.energy'), unit: 'ft·lbf',
    key: 'kinetic_energy_ftlbf', u: 'kinetic_energy_u_ftlbf', otherwise: 0},
  {label: text('live.last.momentum'), unit: 'slug·ft/s',
    key: 'momentum_slug_fps', u: 'momentum_u_slug_fps', otherwise: 2},
  {label: text('live.last.arrow_to_bow'), unit: text('live.last.grains_per_pound'),
    key: 'grains_per_pound', u: null, otherwise: 1},
  {label: text('live.last.speed_at_bow'), unit: 'ft/s',
    key: 'speed_at_bow_fps', u: 'speed_at_bow_u_fps', otherwise: 0},
];

/** Shows a passage; null: nothing was shot yet. `position` says which shot of the end it is, or ''. */
export function showLast(shot, position) {
  byId('last').dataset.counts = String(shot ? shot.counts : true);
  byId('speed').dataset.known = String(Boolean(shot && shot.speed_fps !== null));
  byId('verdict').disabled = !shot;
  setText(byId('speed-unit'), unitFor(SPEED).symbol);
  byId('figures').replaceChildren(...FIGURES.map((kind) => figureRow(kind, shot)));
  if (!shot) return showNothing();
  const speed = speedFigure(shot);
  setText(byId('speed'), speed?.value ?? NO_SPEED);
  setText(byId('speed-u'), speed ? `± ${speed.u ?? text('live.format.not_known')}` : '');
  setText(byId('speed-parts'), speed ? partsText(shot) : text('live.last.no_speed'));
  setText(byId('last-verdict'), verdictText(shot));
  setText(byId('last-when'), whenText(shot, position));
  setText(byId('last-reason'), shot.counts ? facts(shot) : shot.reason ?? '');
  showHint(shot);
  fitDigits();
}

/** Tells a new passage to those who aren't looking, and returns the words. */
export function speak(shot) {
  const verdict = shot.counts ? text('live.last.counts') : text('live.last.doesnt_count', shot.reason ?? '');
  const speed = speedText(shot, true);
  const {symbol, spoken} = unitFor(SPEED);
  const words = `${speed.replace('±', text('live.last.plus_or_minus')).replace(symbol, spoken)}, ${verdict}`;
  setText(byId('spoken'), words);
  document.title = shot.counts ? text('live.range.title', speed) : text('live.last.title_aside', speed);
  return words;
}

/** Makes the digits as large as their box allows. */
export function fitDigits() {
  const box = byId('digits');
  const speed = byId('speed');
  const shown = speed.textContent;
  if (shown.length < WIDEST_USUAL.length || shown === NO_SPEED) speed.textContent = WIDEST_USUAL;
  speed.style.fontSize = '100px';
  const byWidth = (100 * box.clientWidth) / speed.getBoundingClientRect().width;
  speed.textContent = shown;
  speed.style.fontSize = `${Math.floor(Math.min(byWidth, box.clientHeight * 1.2))}px`;
}

// Shows a hint where the reason would stand, so that nothing moves.
function showHint(shot) {
  const hint = byId('last-hint');
  const words = hintText(shot);
  hint.hidden = !words;
  byId('last-reason').hidden = Boolean(words);
  if (!words) return;
  const button = hint.lastElementChild;
  setText(hint.firstElementChild, words);
  setText(button, shot.misfit ? text('live.shot.retag') : text('live.shot.set_aside'));
  button.onclick = () => shot.misfit ? retagToFit(shot, shot.misfit.fits[0]) : setAsideAsStray(shot);
}

function showNothing() {
  setText(byId('speed'), NO_SPEED);
  setText(byId('speed-u'), '');
  setText(byId('speed-parts'), '');
  setText(byId('last-verdict'), text('live.last.no_shot_yet'));
  setText(byId('last-when'), '');
  setText(byId('last-reason'), text('live.last.next_shows'));
  fitDigits();
}

function partsText(shot) {
  const own = uncertainty(here(shot.speed_u_own_fps, SPEED));
  const parts = text('live.last.parts', own, uncertainty(here(shot.speed_u_common_fps, SPEED)));
  return shot.spacing_measured === false ? text('live.last.unmeasured', parts) : parts;
}

function facts(shot) {
  const own = here(shot.speed_u_own_fps, SPEED);
  const front = figure(here(shot.front_fps, SPEED), own);
  const tail = figure(here(shot.tail_fps, SPEED), own);
  const said = [];
  if (front && tail) said.push(text('live.last.front_and_tail', front.value, tail.value));
  const long = here(shot.length_mm / MM_PER_INCH, 'in').toFixed(1);
  if (shot.length_mm) said.push(text('live.last.length', `${long} ${unitFor('in').symbol}`));
  return said.join(', ');
}

function figureRow({label, unit, key, u, otherwise}, shot) {
  const row = (...content) => el('div', {}, el('dt', {}, label), el('dd', {}, ...content));
  const {symbol} = unitFor(unit);
  if (!shot) return row(el('b', {}, '–'), el('span', {}, symbol));
  const known = figure(here(shot[key], unit), u && here(shot[u], unit), otherwise);
  if (!known) return row(el('b', {class: 'unknown'}, text('live.format.not_known')), el('span', {}, remedy(key, shot)));
  const plus = known.u ? `± ${known.u} ` : '';
  return row(el('b', {}, known.value), el('span', {}, plus + symbol));
}
