// Who shoots what: the two big buttons, and the rack to choose from or add to.
import * as api from './api.js';
import {attempt} from './bar.js';
import {byId, el, setText} from './dom.js';
import {dayAndMinute, grainsPerPound, LIGHTEST_GPP, measured, plain} from './format.js';
import {form, openSheet} from './sheet.js';
import {text} from './text.js';
import {here, unitFor} from './units.js';

const BOW_STATE = [
  {name: 'draw_weight_lb', label: text('live.rack.draw_weight'), unit: 'lb', kind: 'number', needed: true},
  {name: 'draw_length_in', label: text('live.rack.draw_length'), unit: 'in', kind: 'number', needed: true},
  {name: 'done', label: text('live.rack.done'), kind: 'text'},
  {name: 'state_on', label: text('live.rack.since'), kind: 'date'},
];
const NAME = {name: 'name', label: text('live.rack.name'), kind: 'text', needed: true};
const BOW = [NAME, ...BOW_STATE];
const ARROW = [
  NAME,
  {name: 'mass_gr', label: text('live.rack.mass'), unit: 'gr', kind: 'number', needed: true},
  {name: 'length_in', label: text('live.rack.length'), unit: 'in', kind: 'number'},
  {name: 'diameter_in', label: text('live.rack.diameter'), unit: 'in', kind: 'number'},
];

/** Shows the current bow and arrow on their buttons. */
export function showTags({tags, bows, arrows}) {
  const gpp = tags.grains_per_pound;
  const [bow, arrow] = [byId('bow'), byId('arrow')];
  setText(bow.children[1], tags.bow ?? text('live.rack.choose_bow'));
  setText(bow.children[2], tags.bow ? weightText(tags) : text('live.rack.none_chosen'));
  setText(arrow.children[1], tags.arrow ?? text('live.rack.choose_arrow'));
  setText(arrow.children[2], tags.arrow ? massText(tags.arrow_mass_gr, gpp) : text('live.rack.none_chosen'));
  byId('first-use').hidden = Boolean(tags.bow && tags.arrow);
  setText(byId('first-use'), firstUse(tags, bows, arrows));
}

function firstUse(tags, bows, arrows) {
  if (!bows.length) return text('live.rack.first_bow');
  if (!arrows.length) return text('live.rack.next_arrow');
  if (!tags.bow) return text('live.rack.choose_who');
  return tags.arrow ? '' : text('live.rack.choose_what');
}

/** Opens the list of bows. */
export function chooseBow({tags, bows}) {
  const choices = inUse(bows).map((bow) => choice(bow.name, bow.name === tags.bow,
    [gppText(weightText(bow), grainsPerPound(tags.arrow_mass_gr, bow.draw_weight_lb)), doneText(bow)],
    () => choose(tags, bow.name, tags.arrow)));
  if (tags.bow) choices.push(choice(text('live.format.no_bow'), false, [], () => choose(tags, null, tags.arrow)));
  const current = tags.bow ? [fold(text('live.rack.something_done', tags.bow), bowState(tags))] : [];
  const adding = form(BOW, text('live.rack.add_and_choose'), (bow) =>
    attempt(() => api.addBow(bow).then(() => api.putTags(tags.station, bow.name, tags.arrow)),
      text('live.rack.bow_added', bow.name), back(tags)));
  openSheet(text('live.rack.which_bow'), ...choices, ...current,
    fold(text('live.rack.add_bow'), adding, !bows.length));
}

/** Opens the list of arrows. */
export function chooseArrow({tags, arrows}) {
  const choices = inUse(arrows).map((arrow) => choice(arrow.name, arrow.name === tags.arrow,
    [massText(arrow.mass_gr, grainsPerPound(arrow.mass_gr, tags.draw_weight_lb)), sizeText(arrow)],
    () => choose(tags, tags.bow, arrow.name)));
  if (tags.arrow) choices.push(choice(text('live.format.no_arrow'), false, [], () => choose(tags, tags.bow, null)));
  const adding = form(ARROW, text('live.rack.add_and_choose'), (arrow) =>
    attempt(() => api.addArrow(arrow).then(() => api.putTags(tags.station, tags.bow, arrow.name)),
      text('live.rack.arrow_added', arrow.name), back(tags)));
  openSheet(text('live.rack.which_arrow'), ...choices, fold(text('live.rack.add_arrow'), adding, !arrows.length));
}

function bowState(tags) {
  // Without a date the state begins now; today's date would reach back over this morning's shots.
  const {draw_weight_lb, draw_length_in} = tags;
  const values = {draw_weight_lb, draw_length_in};
  const fields = BOW_STATE.map((field) => ({...field, value: values[field.name] ?? '',
    label: field.kind === 'date' ? text('live.rack.since_if_not_now') : field.label}));
  return form(fields, text('live.rack.from_now_on'), (state) => attempt(() => api.addBowState(tags.bow, state),
    text('live.rack.is_now', tags.bow, weightText(state)), null));
}

function choose(tags, bow, arrow) {
  const told = bow === tags.bow
    ? text('live.rack.shooting', arrow ?? text('live.format.no_arrow'))
    : text('live.rack.shooting_with', bow ?? text('live.format.no_bow'));
  attempt(() => api.putTags(tags.station, bow, arrow), told, back(tags));
}

// Retired bows and arrows stay in the store, but aren't offered.
const inUse = (things) => things.filter(({retired}) => !retired);

const back = (tags) => () => api.putTags(tags.station, tags.bow, tags.arrow);

function choice(name, isCurrent, lines, onTap) {
  const told = lines.filter(Boolean).map((line) => el('span', {}, line));
  return el('button', {type: 'button', class: 'choice', 'aria-pressed': String(isCurrent), click: onTap},
    el('b', {}, isCurrent ? `● ${name}` : name), ...told);
}

const fold = (words, content, open = false) => el('details', {open}, el('summary', {}, words), content);

const weightText = (bow) =>
  text('live.rack.weight', measured(bow.draw_weight_lb, 'lb'), measured(bow.draw_length_in, 'in'));

const doneText = ({done, state_on: on}) =>
  [done, on && text('live.rack.since_day', dayAndMinute(on))].filter(Boolean).join(', ');

const massText = (massGr, gpp) => gppText(measured(massGr, 'gr'), gpp);

function gppText(start, gpp) {
  if (gpp === null) return start;
  const caution = gpp < LIGHTEST_GPP ? ` ▲ ${text('live.rack.light', LIGHTEST_GPP)}` : '';
  return `${start} · ${text('live.rack.gpp', gpp.toFixed(1))}${caution}`;
}

function sizeText({length_in: length, diameter_in: diameter}) {
  const thick = `${plain(here(diameter, 'in'), 3)} ${unitFor('in').symbol}`;
  const said = [length && text('live.rack.long', measured(length, 'in')), diameter && text('live.rack.thick', thick)];
  return said.filter(Boolean).join(', ');
}
