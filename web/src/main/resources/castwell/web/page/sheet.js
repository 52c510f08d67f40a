// The one dialog of the page: a sheet from the foot on a phone, a box in the middle elsewhere.
import {byId, el} from './dom.js';
import {text} from './text.js';
import {here, unitFor} from './units.js';

/** Opens the sheet with a heading and its content; Escape, "close" and a tap outside close it. */
export function openSheet(heading, ...content) {
  const sheet = byId('sheet');
  const close = el('button', {type: 'button', click: closeSheet}, text('live.bar.close'));
  const inside = el('div', {class: 'inside'},
    el('header', {}, el('h2', {id: 'sheet-heading', tabindex: '-1'}, heading), close), ...content);
  sheet.replaceChildren(inside);
  sheet.onclick = ({target}) => {
    if (target === sheet) closeSheet();
  };
  if (!sheet.open) sheet.showModal();
  sheet.scrollTop = 0;
  byId('sheet-heading').focus();
}

/** Closes the sheet if it is open; the browser gives the focus back. */
export function closeSheet() {
  if (byId('sheet').open) byId('sheet').close();
}

/**
 * Makes a form from fields {name, label, unit, kind: 'text'|'number'|'date', needed, value}.
 * `onSend` gets an object of what was filled in: numbers as numbers, empty fields left out. A unit
 * is the trade's, and so are the numbers that come in and go out; the person sees and fills in
 * their own. A number that is left as it was shown goes out as it came in.
 */
export function form(fields, button, onSend) {
  const rows = fields.map((field) => el('label', {}, el('span', {}, field.label), input(field),
    ...(field.unit ? [el('span', {}, unitFor(field.unit).symbol)] : [])));
  const send = (event) => {
    event.preventDefault();
    onSend(read(fields, event.target));
  };
  return el('form', {submit: send}, ...rows, el('button', {class: 'main'}, button));
}

function input({name, kind, unit, needed = false, value = kind === 'date' ? today() : ''}) {
  const isMeasure = unit && value !== '';
  const shown = isMeasure ? Number(here(Number(value), unit).toPrecision(4)) : value;
  const attributes = {name, value: shown, type: kind, required: needed, autocomplete: 'off'};
  if (isMeasure) attributes['data-kept'] = value;
  if (kind === 'number') Object.assign(attributes, {step: 'any', min: '0', inputmode: 'decimal'});
  return el('input', attributes);
}

// The Swedish way of writing a date is ISO 8601; it is in the person's own time zone.
const today = () => new Date().toLocaleDateString('sv');

function read(fields, from) {
  const filled = {};
  for (const {name, kind, unit} of fields) {
    const field = from.elements[name];
    const typed = field.value.trim();
    if (typed !== '') filled[name] = kind === 'number' ? number(field, typed, unit) : typed;
  }
  return filled;
}

function number(field, typed, unit) {
  const {kept} = field.dataset;
  return kept !== undefined && field.value === field.defaultValue ? Number(kept) : trade(Number(typed), unit);
}

// Back to trade units, with as many digits as anybody types and without the rounding noise of
// converting back and forth.
const trade = (value, unit) => (unit ? Number((value / unitFor(unit).factor).toPrecision(12)) : value);
