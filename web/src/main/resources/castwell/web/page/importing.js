// Takes a sheet in: look at it, say what each column means, see every bad line, then take it in.
import {write} from './api.js';
import {attempt} from './bar.js';
import {byId, el, whileBusy} from './dom.js';
import {told} from './done.js';
import {text} from './text.js';

const PATIENCE_MS = 120000;

/** Runs the data page's form, if this is the data page. */
export function watchSheet() {
  const form = byId('sheet-form');
  if (!form) return;
  const {file, csv, take, what} = form.elements;
  file.addEventListener('change', async () => {
    if (file.files.length) csv.value = await file.files[0].text();
    forget(form);
  });
  for (const field of [csv, what]) field.addEventListener('input', () => forget(form));
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    look(form);
  });
  take.addEventListener('click', () => attempt(async () => {
    const taken = await whileBusy(form, () => write('POST', '/api/import', sheet(form), PATIENCE_MS));
    told(form.dataset.taken.replace('{taken}', taken.taken).replace('{already}', taken.already));
    location.reload();
  }, '', null));
}

function forget(form) {
  form.elements.take.disabled = true;
  byId('matching').replaceChildren();
}

const selects = () => [...byId('matching').querySelectorAll('select')];

function sheet(form) {
  const {what, csv, file} = form.elements;
  const map = Object.fromEntries(selects().filter((s) => s.value).map((s) => [s.dataset.heading, s.value]));
  return {what: what.value, csv: csv.value, map, source: file.files[0]?.name ?? text('live.importing.pasted')};
}

async function look(form) {
  const refusal = form.querySelector('.refusal');
  refusal.hidden = true;
  try {
    show(form, await whileBusy(form, () => write('POST', '/api/import/preview', sheet(form), PATIENCE_MS)));
  } catch (error) {
    refusal.textContent = `▲ ${error.message}`;
    refusal.hidden = false;
    refusal.focus();
  }
}

function show(form, {headings, meant, columns, rows, would, refused, lines}) {
  const place = byId('matching');
  const {fits, none, needed, line, why, would: wouldWords} = place.dataset;
  const choices = (heading) => el('select', {'data-heading': heading, 'aria-label': heading, change: () => look(form)},
    el('option', {value: ''}, none),
    ...Object.entries(columns).map(([name, isNeeded]) => el('option', {value: name, selected: meant[heading] === name},
      isNeeded ? `${name} (${needed})` : name)));
  const head = el('tr', {},
    ...headings.map((heading) => el('th', {scope: 'col'}, heading, el('br'), choices(heading))));
  const body = rows.map((row) => el('tr', {}, ...row.map((cell) => el('td', {}, cell))));
  const answer = would
    ? el('p', {class: 'answer', role: 'status'}, wouldWords.replace(/\{(\w+)\}/g, (_, key) => would[key]))
    : el('p', {class: 'empty', role: 'status'}, `▲ ${refused}`);
  const bad = lines?.length
    ? [el('div', {class: 'scroll', tabindex: '0', role: 'region', 'aria-label': why}, el('table', {},
      el('thead', {}, el('tr', {}, el('th', {scope: 'col'}, line), el('th', {scope: 'col'}, why))),
      el('tbody', {}, ...lines.map((l) => el('tr', {}, el('th', {scope: 'row'}, String(l.line)),
        el('td', {class: 'words'}, l.reason))))))]
    : [];
  place.replaceChildren(answer, el('p', {}, fits),
    el('div', {class: 'scroll', tabindex: '0', role: 'region', 'aria-label': fits},
      el('table', {}, el('thead', {}, head), el('tbody', {}, ...body))), ...bad);
  form.elements.take.disabled = !would;
}
