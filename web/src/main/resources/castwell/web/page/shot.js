// One shot's sheet: set aside, bring back, retag, each in one tap.
import * as api from './api.js';
import {attempt} from './bar.js';
import {el} from './dom.js';
import {speedText, tagText, verdictText, whenText} from './format.js';
import {form, openSheet} from './sheet.js';

const REASONS = ['short draw', 'plucked loose', 'wrong arrow', 'wrong bow', 'string creep'];
const RETAGGED = 'retagged on the range page';

/** Opens the sheet of a shot. */
export function openShot(shot, snapshot) {
  openSheet(speedText(shot, true),
    el('p', {}, el('strong', {}, whenText(shot, verdictText(shot))), shot.counts ? '' : el('br'), shot.reason ?? ''),
    ...(shot.misfit ? misfit(shot) : []),
    ...(shot.counts ? setAside(shot) : bringBack(shot)),
    ...(shot.judged_by === 'person' ? [leaveToRules(shot)] : []),
    el('h3', {}, `Shot with ${tagText(shot)}`),
    ...retagToCurrent(shot, snapshot.tags),
    otherTags(shot, snapshot));
}

function misfit(shot) {
  return [
    el('p', {}, `▲ ${shot.misfit.sentence}`),
    ...shot.misfit.fits.map((fit) => button(`retag to ${tagText(fit)}`, () => retagToFit(shot, fit), 'main')),
    button(`its tags are right: ${tagText(shot)}`, () => retag(shot, shot.bow, shot.arrow, 'its tags are right')),
  ];
}

/** Gives a shot the bow and arrow that it fits better. */
export function retagToFit(shot, {bow, arrow}) {
  retag(shot, bow, arrow, 'fits better, by earlier shots');
}

function setAside(shot) {
  const typed = [{name: 'reason', label: 'other reason', kind: 'text', needed: true}];
  return [
    el('h3', {}, 'Set aside, because'),
    el('div', {class: 'choices'}, ...REASONS.map((reason) => button(reason, () => decide(shot, false, reason)))),
    form(typed, 'set aside', ({reason}) => decide(shot, false, reason)),
  ];
}

function bringBack(shot) {
  return [button('bring back: it counts', () => decide(shot, true, 'brought back on the range page'), 'main')];
}

function leaveToRules(shot) {
  return button('leave it to the rules again', () => decide(shot, null, 'left to the rules'));
}

function retagToCurrent(shot, tags) {
  if (tagText(shot) === tagText(tags)) return [];
  return [button(`retag to ${tagText(tags)}`, () => retag(shot, tags.bow, tags.arrow, RETAGGED), 'main')];
}

function otherTags(shot, {bows, arrows}) {
  const bow = select('bow', bows, shot.bow);
  const arrow = select('arrow', arrows, shot.arrow);
  const send = button('retag', () => retag(shot, bow.value || null, arrow.value || null, RETAGGED));
  return el('details', {}, el('summary', {}, 'other tags'),
    el('div', {class: 'fields'}, el('label', {}, el('span', {}, 'bow'), bow),
      el('label', {}, el('span', {}, 'arrow'), arrow), send));
}

function select(what, things, current) {
  const options = things.map(({name}) => el('option', {value: name, selected: name === current}, name));
  return el('select', {}, el('option', {value: '', selected: current === null}, `no ${what}`), ...options);
}

function decide(shot, counts, reason) {
  const before = shot.judged_by === 'person' ? shot.counts : null;
  const told = {true: 'Brought back.', false: `Set aside: ${reason}.`, null: 'Left to the rules.'}[counts];
  attempt(() => api.decide(shot.shot_id, counts, reason), told,
    () => api.decide(shot.shot_id, before, before === null ? 'undone' : shot.reason ?? 'undone'));
}

function retag(shot, bow, arrow, why) {
  attempt(() => api.retag(shot.shot_id, bow, arrow, why), `Retagged: ${tagText({bow, arrow})}.`,
    () => api.retag(shot.shot_id, shot.bow, shot.arrow, 'undone'));
}

function button(words, onTap, kind = 'plain') {
  return el('button', {type: 'button', class: kind, click: onTap}, words);
}
