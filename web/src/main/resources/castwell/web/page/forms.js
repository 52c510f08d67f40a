// Sends a page's forms as JSON to the API. `data-send="POST /api/bows"` says where to; {name} in it
// is a field of the form. `data-then` says where to go afterwards (without it, the same page), and
// `data-told` what was done. `data-next` with `data-next-body` is sent after it, and `data-
// undo="POST /api/..."` with `data-undo-body` undoes it.
import {write} from './api.js';
import {say} from './bar.js';
import {whileBusy} from './dom.js';
import {told} from './done.js';
import {text} from './text.js';

let isBusy = false;

/** Makes every form with `data-send` send itself. */
export function watchForms() {
  document.addEventListener('submit', (event) => {
    const form = event.target;
    if (!form.dataset.send && form.dataset.retag === undefined) return;
    event.preventDefault();
    if (form.dataset.send) send(form);
    else retag(form);
  });
}

async function send(form) {
  if (isBusy) return;
  isBusy = true;
  try {
    done(form, await whileBusy(form, () => sent(form)));
  } catch (refusal) {
    show(form, refusal.message);
  } finally {
    isBusy = false;
  }
}

// Sends a form, and returns what was filled in and what was answered.
async function sent(form) {
  const values = read(form);
  const [method, path] = form.dataset.send.split(' ');
  const answer = await write(method, filled(path, values), bodyOf(form, values));
  const all = {...values, ...answer};
  if (form.dataset.next) {
    const [nextMethod, nextPath] = form.dataset.next.split(' ');
    await write(nextMethod, filled(nextPath, all), JSON.parse(form.dataset.nextBody));
  }
  return all;
}

// Retags the ticked shots at once. A bow or an arrow that isn't chosen stays as it was; the undo is
// for all of them at once too.
async function retag(form) {
  const ticked = [...document.querySelectorAll('[data-shot]:checked')];
  const {bow, arrow} = form.elements;
  if (!ticked.length || !(bow.value || arrow.value)) return show(form, form.dataset.hint);
  const as = ({dataset: {shot, ...was}}, b, a) =>
    ({shot_id: shot, bow: b || was.bow || null, arrow: a || was.arrow || null});
  const body = (shots) => ({shots, why: form.dataset.why});
  try {
    await write('POST', '/api/shots/tags', body(ticked.map((box) => as(box, bow.value, arrow.value))));
    told(form.dataset.told.replace('{n}', ticked.length),
      {send: 'POST /api/shots/tags', body: body(ticked.map((box) => as(box, '', '')))});
    location.reload();
  } catch (refusal) {
    show(form, refusal.message);
  }
}

function done(form, values) {
  const {told: words, undo, undoBody, then} = form.dataset;
  const back = undo && {send: filled(undo, values), body: JSON.parse(undoBody ?? '{}')};
  if (words) told(filled(words, values, String), back);
  if (then) location.assign(filled(then, values));
  else location.reload();
}

// Reads a form's values by the kind of each field. Empty fields are left out, and a number in the
// person's own unit becomes the API's.
function read(form) {
  const values = {};
  for (const field of form.elements) {
    if (!field.name || field.disabled) continue;
    const value = valueOf(field);
    if (value !== undefined) values[field.name] = value;
  }
  return values;
}

function valueOf(field) {
  if (field.type === 'checkbox' && !field.dataset.list) return field.checked || undefined;
  if (field.dataset.json !== undefined) return JSON.parse(field.value);
  if (field.dataset.rows) return rowsOf(field);
  const typed = field.value.trim();
  if (typed === '') return undefined;
  if (field.dataset.factor === undefined) return typed;
  if (field.dataset.kept && field.value === field.defaultValue) return Number(field.dataset.kept);
  return scaled(typed, field.dataset.factor, field.labels?.[0]?.firstElementChild?.textContent ?? field.name);
}

function scaled(typed, factor, what) {
  const number = Number(typed.replace(',', '.'));
  if (typed === '' || !Number.isFinite(number)) throw new Error(text('live.forms.no_number', what, typed));
  return Number((number * Number(factor)).toPrecision(12));
}

// Reads lines of figures: `data-rows` names each figure's field with its factor.
function rowsOf(field) {
  const columns = field.dataset.rows.split(' ');
  return field.value.split('\n').map((line) => line.trim()).filter(Boolean).map((line, row) => {
    const cells = line.split(/[\s;]+/);
    const where = text('live.forms.line', row + 1);
    const named = cells.map((cell, i) => [columns[2 * i], scaled(cell, columns[2 * i + 1], where)]);
    return Object.fromEntries(named.filter(([name]) => name));
  });
}

// Leaves out of the body what the path names already.
function bodyOf(form, values) {
  const named = [...form.dataset.send.matchAll(/\{(\w+)\}/g)].map((found) => found[1]);
  return Object.fromEntries(Object.entries(values).filter(([name]) => !named.includes(name)));
}

const filled = (pattern, values, encode = encodeURIComponent) =>
  pattern.replace(/\{(\w+)\}/g, (_, name) => encode(values[name] ?? ''));

function show(form, words) {
  const place = form.querySelector('.refusal');
  if (!place) return say(words);
  place.textContent = `▲ ${words}`;
  place.hidden = false;
  place.focus();
}
