// Who shoots: the two big buttons, and the rack to choose from or add to.
import * as api from './api.js';
import {attempt} from './bar.js';
import {byId, el, setText} from './dom.js';
import {dayAndMinute, grainsPerPound, LIGHTEST_GPP, measured, plain} from './format.js';
import {form, openSheet} from './sheet.js';
import {here, unitFor} from './units.js';

const BOW_STATE = [
  {name: 'draw_weight_lb', label: 'draw weight', unit: 'lb', kind: 'number', needed: true},
  {name: 'draw_length_in', label: 'at draw length', unit: 'in', kind: 'number', needed: true},
  {name: 'done', label: 'what was last done', kind: 'text'},
  {name: 'state_on', label: 'since', kind: 'date'},
];
const BOW = [{name: 'name', label: 'name', kind: 'text', needed: true}, ...BOW_STATE];
const ARROW = [
  {name: 'name', label: 'name', kind: 'text', needed: true},
  {name: 'mass_gr', label: 'mass', unit: 'gr', kind: 'number', needed: true},
  {name: 'length_in', label: 'length', unit: 'in', kind: 'number'},
  {name: 'diameter_in', label: 'diameter', unit: 'in', kind: 'number'},
];

/** Shows the current bow and arrow on their buttons. */
export function showTags({tags, bows, arrows}) {
  const gpp = tags.grains_per_pound;
  const [bow, arrow] = [byId('bow'), byId('arrow')];
  setText(bow.children[1], tags.bow ?? 'choose a bow');
  setText(bow.children[2], tags.bow ? weightText(tags) : 'none chosen');
  setText(arrow.children[1], tags.arrow ?? 'choose an arrow');
  setText(arrow.children[2], tags.arrow ? massText(tags.arrow_mass_gr, gpp) : 'none chosen');
  byId('first-use').hidden = Boolean(tags.bow && tags.arrow);
  setText(byId('first-use'), firstUse(tags, bows, arrows));
}

function firstUse(tags, bows, arrows) {
  if (!bows.length) return 'First add a bow: its draw weight, and the draw length it was weighed at.';
  if (!arrows.length) return 'Next add an arrow: weigh it, for energy and momentum need its mass.';
  if (!tags.bow) return 'Choose the bow that shoots: every shot is kept with it.';
  return tags.arrow ? '' : 'Choose the arrow that is shot: energy and momentum need its mass.';
}

/** Opens the list of bows. */
export function chooseBow({tags, bows}) {
  const choices = inUse(bows).map((bow) => choice(bow.name, bow.name === tags.bow,
    [gppText(weightText(bow), grainsPerPound(tags.arrow_mass_gr, bow.draw_weight_lb)), doneText(bow)],
    () => choose(tags, bow.name, tags.arrow)));
  if (tags.bow) choices.push(choice('no bow', false, [], () => choose(tags, null, tags.arrow)));
  const current = tags.bow ? [fold(`something was done to ${tags.bow}`, bowState(tags))] : [];
  openSheet('Which bow?', ...choices, ...current, fold('add a bow', form(BOW, 'add and choose', (bow) =>
    attempt(() => api.addBow(bow).then(() => api.putTags(tags.station, bow.name, tags.arrow)),
      `${bow.name} is on the rack and chosen.`, back(tags))), !bows.length));
}

/** Opens the list of arrows. */
export function chooseArrow({tags, arrows}) {
  const choices = inUse(arrows).map((arrow) => choice(arrow.name, arrow.name === tags.arrow,
    [massText(arrow.mass_gr, grainsPerPound(arrow.mass_gr, tags.draw_weight_lb)), sizeText(arrow)],
    () => choose(tags, tags.bow, arrow.name)));
  if (tags.arrow) choices.push(choice('no arrow', false, [], () => choose(tags, tags.bow, null)));
  openSheet('Which arrow?', ...choices, fold('add an arrow', form(ARROW, 'add and choose', (arrow) =>
    attempt(() => api.addArrow(arrow).then(() => api.putTags(tags.station, tags.bow, arrow.name)),
      `${arrow.name} is in the quiver and chosen.`, back(tags))), !arrows.length));
}

function bowState(tags) {
  // No date means now: today's would reach back over the shots of this morning.
  const values = {draw_weight_lb: plain(tags.draw_weight_lb, 2), draw_length_in: plain(tags.draw_length_in, 2)};
  const fields = BOW_STATE.map((field) => ({...field, value: values[field.name] ?? '',
    label: field.kind === 'date' ? 'since, if not now' : field.label}));
  return form(fields, 'from now on', (state) => attempt(() => api.addBowState(tags.bow, state),
    `${tags.bow} is now ${weightText(state)}.`, null));
}

function choose(tags, bow, arrow) {
  const told = bow === tags.bow ? `Now shooting ${arrow ?? 'no arrow'}.` : `Now shooting with ${bow ?? 'no bow'}.`;
  attempt(() => api.putTags(tags.station, bow, arrow), told, back(tags));
}

// What was retired stays in the store, and out of the way.
const inUse = (things) => things.filter(({retired}) => !retired);

const back = (tags) => () => api.putTags(tags.station, tags.bow, tags.arrow);

function choice(name, isCurrent, lines, onTap) {
  const told = lines.filter(Boolean).map((line) => el('span', {}, line));
  return el('button', {type: 'button', class: 'choice', 'aria-pressed': String(isCurrent), click: onTap},
    el('b', {}, isCurrent ? `● ${name}` : name), ...told);
}

const fold = (words, content, open = false) => el('details', {open}, el('summary', {}, words), content);

const weightText = (bow) => `${measured(bow.draw_weight_lb, 'lb')} at ${measured(bow.draw_length_in, 'in')}`;

const doneText = ({done, state_on: on}) => [done, on && `since ${dayAndMinute(on)}`].filter(Boolean).join(', ');

const massText = (massGr, gpp) => gppText(measured(massGr, 'gr'), gpp);

function gppText(start, gpp) {
  if (gpp === null) return start;
  const caution = gpp < LIGHTEST_GPP ? ` ▲ below ${LIGHTEST_GPP}: hard on a wooden bow` : '';
  return `${start} · ${gpp.toFixed(1)} gpp${caution}`;
}

function sizeText({length_in: length, diameter_in: diameter}) {
  const said = [length && `${measured(length, 'in')} long`, diameter && `${plain(here(diameter, 'in'), 3)} ${unitFor('in').symbol} thick`];
  return said.filter(Boolean).join(', ');
}
