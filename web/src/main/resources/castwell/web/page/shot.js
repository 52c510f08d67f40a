// The sheet of one shot: set aside, bring back, retag, each in one tap.
import * as api from './api.js';
import {attempt} from './bar.js';
import {el} from './dom.js';
import {edgesFigure} from './edges.js';
import {speedText, tagText, verdictText, whenText} from './format.js';
import {form, openSheet} from './sheet.js';
import {text} from './text.js';

const REASONS = [text('live.shot.short_draw'), text('live.shot.plucked_loose'), text('live.shot.wrong_arrow'),
  text('live.shot.wrong_bow'), text('live.shot.string_creep')];
const RETAGGED = text('live.shot.retagged_here');
const UNDONE = text('live.shot.undone');

/** Opens the sheet of a shot. */
export function openShot(shot, snapshot) {
  const seen = el('div');
  openSheet(speedText(shot, true),
    el('p', {}, el('strong', {}, whenText(shot, verdictText(shot))), shot.counts ? '' : el('br'), shot.reason ?? ''),
    ...(shot.spacing_measured === false ? [el('p', {}, text('live.shot.unmeasured'))] : []),
    ...(shot.misfit ? misfit(shot) : []),
    ...(shot.stray ? stray(shot) : []),
    ...(shot.counts ? setAside(shot) : bringBack(shot)),
    ...(shot.judged_by === 'person' ? [leaveToRules(shot)] : []),
    el('h3', {}, text('live.shot.with', tagText(shot))),
    ...retagToCurrent(shot, snapshot.tags),
    otherTags(shot, snapshot), seen);
  if (shot.entered === 'by-gates') showEdges(shot, seen);
}

/** Adds, as soon as it comes, what each edge was: the shot can be judged without. */
async function showEdges(shot, place) {
  const {story} = await api.readShot(shot.shot_id).catch(() => ({}));
  if (!story) return;
  place.replaceChildren(el('h3', {}, text('live.shot.as_the_gates_saw_it')),
    ...story.notes.map((note) => el('p', {}, note)), edgesFigure(story.edges));
}

function misfit(shot) {
  return [
    el('p', {}, `▲ ${shot.misfit.sentence}`),
    ...shot.misfit.fits.map((fit) =>
      button(text('live.shot.retag_to', tagText(fit)), () => retagToFit(shot, fit), 'main')),
    button(text('live.shot.tags_right_as', tagText(shot)),
      () => retag(shot, shot.bow, shot.arrow, text('live.shot.tags_right'))),
  ];
}

/** Gives a shot the bow and arrow that it fits better. */
export function retagToFit(shot, {bow, arrow}) {
  retag(shot, bow, arrow, text('live.shot.fits_better'));
}

function stray(shot) {
  return [
    el('p', {}, `▲ ${shot.stray.sentence}`),
    ...(shot.stray.set_aside ? [button(text('live.shot.aside_as_stray'), () => setAsideAsStray(shot), 'main')] : []),
    button(text('live.shot.is_good'), () => decide(shot, true, text('live.shot.good_here'), text('live.shot.kept'))),
  ];
}

/** Sets a shot aside as a stray for good, whatever is shot after it. */
export function setAsideAsStray(shot) {
  decide(shot, false, text('live.shot.stray'));
}

function setAside(shot) {
  const typed = [{name: 'reason', label: text('live.shot.other_reason'), kind: 'text', needed: true}];
  return [
    el('h3', {}, text('live.shot.aside_because')),
    el('div', {class: 'choices'}, ...REASONS.map((reason) => button(reason, () => decide(shot, false, reason)))),
    form(typed, text('live.shot.set_aside'), ({reason}) => decide(shot, false, reason)),
  ];
}

function bringBack(shot) {
  const back = () => decide(shot, true, text('live.shot.brought_back_here'));
  return [button(text('live.shot.bring_back'), back, 'main')];
}

function leaveToRules(shot) {
  return button(text('live.shot.leave_to_rules'), () => decide(shot, null, text('live.shot.left_here')));
}

function retagToCurrent(shot, tags) {
  if (tagText(shot) === tagText(tags)) return [];
  const toCurrent = () => retag(shot, tags.bow, tags.arrow, RETAGGED);
  return [button(text('live.shot.retag_to', tagText(tags)), toCurrent, 'main')];
}

function otherTags(shot, {bows, arrows}) {
  const bow = select(text('live.format.no_bow'), bows, shot.bow);
  const arrow = select(text('live.format.no_arrow'), arrows, shot.arrow);
  const send = button(text('live.shot.retag'), () => retag(shot, bow.value || null, arrow.value || null, RETAGGED));
  return el('details', {}, el('summary', {}, text('live.shot.other_tags')),
    el('div', {class: 'fields'}, el('label', {}, el('span', {}, text('live.shot.bow')), bow),
      el('label', {}, el('span', {}, text('live.shot.arrow')), arrow), send));
}

function select(none, things, current) {
  const options = things.map(({name}) => el('option', {value: name, selected: name === current}, name));
  return el('select', {}, el('option', {value: '', selected: current === null}, none), ...options);
}

function decide(shot, counts, reason, told = toldOf(counts, reason)) {
  const before = shot.judged_by === 'person' ? shot.counts : null;
  attempt(() => api.decide(shot.shot_id, counts, reason), told,
    () => api.decide(shot.shot_id, before, before === null ? UNDONE : shot.reason ?? UNDONE));
}

function toldOf(counts, reason) {
  if (counts === null) return text('live.shot.left');
  return counts ? text('live.shot.brought_back') : text('live.shot.was_set_aside', reason);
}

function retag(shot, bow, arrow, why) {
  attempt(() => api.retag(shot.shot_id, bow, arrow, why), text('live.shot.retagged', tagText({bow, arrow})),
    () => api.retag(shot.shot_id, shot.bow, shot.arrow, UNDONE));
}

function button(words, onTap, kind = 'plain') {
  return el('button', {type: 'button', class: kind, click: onTap}, words);
}
