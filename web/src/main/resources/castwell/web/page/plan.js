// The plan that is being shot: what to pick up next, and skip, repeat and pause by button or key.
import * as api from './api.js';
import {attempt} from './bar.js';
import {byId, el, setText} from './dom.js';
import {grainsPerPound, LIGHTEST_GPP, tagText} from './format.js';
import {openPlan, openPlanning, usesKeys} from './planning.js';
import {text} from './text.js';

const DISMISSED_KEY = 'castwell.plan-put-away';
// Sizes in rem: the largest that a name is written in. A name of n letters gets WIDTH / n at most, so that it fits
// a phone.
const LARGEST = {arrow: 2.5, bow: 1.6};
const WIDTH = 34;
const SMALLEST = .95;
const OVER_FOR_MS = 3 * 3600 * 1000;

let shown = null;
let offered = '';

/** Shows the station's plan, or the way to one. */
export function showPlan(snapshot) {
  shown = snapshot;
  const {plan} = snapshot;
  const isShown = Boolean(plan) && !(plan.state === 'ended' && isPast(plan, snapshot.now));
  byId('plan').hidden = !isShown;
  byId('plan-open').hidden = isShown;
  if (!isShown) return;
  byId('plan').dataset.state = plan.state;
  setText(byId('plan-name'), plan.name);
  setText(byId('plan-count'), text('live.plan.count', plan.done, plan.turns));
  write(byId('plan-arrow'), plan.now?.arrow ?? text('live.plan.all_done'), LARGEST.arrow);
  write(byId('plan-bow'), plan.now ? text('live.plan.from', plan.now.bow) : '', LARGEST.bow);
  setText(byId('plan-told'), toldText(plan, snapshot));
  showButtons(plan);
  showAgain(plan);
}

/** Opens the plan that is shown; where there is none, opens the sheet in which one is made. */
export function planOrStart(snapshot) {
  if (snapshot.plan && !byId('plan').hidden) openPlan(snapshot.plan, {back, end});
  else openPlanning(snapshot);
}

function write(element, name, largest) {
  setText(element, name);
  element.style.fontSize = `${Math.max(SMALLEST, Math.min(largest, WIDTH / name.length))}rem`;
}

function toldText(plan, rack) {
  if (plan.state !== 'running') return plan.sentence;
  if (plan.missed) return `✕ ${plan.sentence}`;
  const then = plan.then ? text('live.plan.then', plan.then.arrow, plan.then.bow) : text('live.plan.last');
  return caution(plan.now, rack) + then;
}

function caution(turn, {bows, arrows}) {
  const bow = bows.find(({name}) => name === turn.bow);
  const arrow = arrows.find(({name}) => name === turn.arrow);
  const gpp = grainsPerPound(arrow?.mass_gr, bow?.draw_weight_lb);
  return gpp !== null && gpp < LIGHTEST_GPP ? `▲ ${text('live.plan.light', gpp.toFixed(1))}; ` : '';
}

function showButtons(plan) {
  const wanted = `${plan.state} ${Boolean(plan.last_shot)} ${usesKeys()}`;
  if (offered === wanted) return;
  offered = wanted;
  byId('plan-buttons').replaceChildren(...BUTTONS[plan.state].map((name) => {
    const {key, words, run} = ACTIONS[name];
    const shortcut = key && usesKeys() ? [el('kbd', {}, key.toUpperCase())] : [];
    return el('button', {type: 'button', class: name === 'resume' ? 'main' : 'plain', click: () => run(shown.plan),
      ...(shortcut.length ? {'aria-keyshortcuts': key} : {}),
      disabled: name === 'repeat' && !plan.last_shot}, el('span', {}, words), ...shortcut);
  }));
}

function showAgain(plan) {
  byId('plan-again').replaceChildren(...plan.shoot_again.map((turn) => el('p', {}, el('span', {}, turn.sentence),
    el('button', {type: 'button',
      click: () => tell(plan, 'repeat', turn.turn, text('live.plan.turn_once_more', turn.turn), 'skip')},
    text('live.plan.repeat_it')))));
}

/** Does what a key stands for, when nothing else has the keyboard. */
export function planKey(event) {
  const isTyping = event.target.closest?.('input, select, textarea, dialog') || document.querySelector('dialog[open]');
  const isPlain = !event.ctrlKey && !event.altKey && !event.metaKey && !event.repeat;
  if (isTyping || !isPlain || !usesKeys() || byId('plan').hidden) return;
  const button = byId('plan-buttons').querySelector(`[aria-keyshortcuts="${CSS.escape(event.key.toLowerCase())}"]`);
  button?.click();
}

function skip(plan) {
  const follows = plan.then?.turn ?? plan.turns + 1;
  const undo = follows === plan.now.turn + 1 ? 'back' : null;
  tell(plan, 'skip', plan.now.turn, text('live.plan.skipped', tagText(plan.now)), undo);
}

function repeat(plan) {
  const told = text('live.plan.once_more', tagText(plan.last_shot));
  tell(plan, 'repeat', plan.last_shot.turn, told, plan.now ? 'skip' : null);
}

const pause = (plan) => tell(plan, 'pause', plan.now.turn, text('live.plan.paused'), 'resume');

const resume = (plan) => tell(plan, 'resume', plan.now.turn, text('live.plan.now', tagText(plan.now)), 'pause');

const end = (plan) => tell(plan, 'end', plan.now.turn, text('live.plan.ended'), 'resume');

const back = (plan) => tell(plan, 'back', plan.now?.turn, text('live.plan.back'), null);

// Sends the turn along: if a shot or another phone was faster, the wrong turn isn't skipped.
function tell(plan, word, turn, told, undo) {
  attempt(() => api.tellPlan(plan.plan, word, turn), told, undo && (() => api.tellPlan(plan.plan, undo)));
}

function putAway(plan) {
  localStorage.setItem(DISMISSED_KEY, String(plan.plan));
  showPlan(shown);
}

const isPast = (plan, now) => localStorage.getItem(DISMISSED_KEY) === String(plan.plan) ||
  Date.parse(now) - Date.parse(plan.since) > OVER_FOR_MS;

const ACTIONS = {
  skip: {key: 's', words: text('live.plan.skip'), run: skip},
  repeat: {key: 'r', words: text('live.plan.repeat'), run: repeat},
  pause: {key: 'p', words: text('live.plan.pause'), run: pause},
  resume: {key: 'p', words: text('live.plan.resume'), run: resume},
  end: {words: text('live.plan.end'), run: end},
  fresh: {words: text('live.plan.new'), run: () => openPlanning(shown)},
  putAway: {words: text('live.plan.put_away'), run: putAway},
};
const BUTTONS = {
  running: ['skip', 'repeat', 'pause'],
  paused: ['resume', 'repeat', 'end'],
  ended: ['repeat', 'fresh', 'putAway'],
};
