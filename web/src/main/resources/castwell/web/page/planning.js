// The sheets of a plan: one for making a plan, from the plan report or by hand, and one with all of
// its turns.
import * as api from './api.js';
import {attempt} from './bar.js';
import {el} from './dom.js';
import {closeSheet, form, openSheet} from './sheet.js';
import {text} from './text.js';

const KEYS_KEY = 'castwell.plan-keys';

/** Whether single keys skip, repeat and pause. A person may turn them off. */
export const usesKeys = () => localStorage.getItem(KEYS_KEY) !== 'off';

/** Opens the sheet in which a plan is made. */
export async function openPlanning({station, bows, arrows}) {
  const waiting = await api.readPlans(station).then((plans) => plans.filter((p) => p.state === 'ready'), () => []);
  openSheet(text('live.planning.heading'),
    el('p', {}, text('live.planning.told')),
    ...(bows.length && arrows.length ? [forARework(station, bows), byHand(station, bows, arrows)]
      : [el('p', {}, text('live.planning.first_add'))]),
    ...(waiting.length ? [el('h3', {}, text('live.planning.waiting')), ...waiting.map(startButton)] : []));
}

function startButton(plan) {
  return el('button', {type: 'button', click: () => begin(() => Promise.resolve(plan))},
    text('live.planning.start', plan.name, plan.turns));
}

function begin(make) {
  attempt(async () => {
    const {plan} = await make();
    await api.tellPlan(plan, 'start');
  }, text('live.planning.begun'), null);
}

function forARework(station, bows) {
  const bow = select(bows.map(({name}) => [name, name]));
  const control = select([['', text('live.planning.no_control')], ...bows.map(({name}) => [name, name])]);
  const fields = [
    {name: 'change_fps', label: text('live.planning.change'), unit: 'ft/s', kind: 'number', needed: true, value: '2'},
    {name: 'sd_fps', label: text('live.planning.scatter'), unit: 'ft/s', kind: 'number'},
  ];
  const send = (numbers) => begin(() => api.makePlan({station, from: {
    bow: bow.value, control: control.value && control.value !== bow.value ? [control.value] : [],
    seed: Date.now() % 100000, ...numbers}}));
  return fold(text('live.planning.for_rework'),
    el('div', {class: 'fields'}, row(text('live.planning.bow'), bow), row(text('live.planning.control'), control)),
    form(fields, text('live.planning.make'), send));
}

function byHand(station, bows, arrows) {
  const [bowBoxes, arrowBoxes] = [boxes(bows), boxes(arrows)];
  const order = select([['shuffled', text('live.planning.shuffled')], ['in order', text('live.planning.ordered')]]);
  const fields = [{name: 'rounds', label: text('live.planning.rounds'), kind: 'number', needed: true, value: '3'}];
  const send = ({rounds}) => begin(() => {
    const round = chosen(bowBoxes).flatMap((bow) => chosen(arrowBoxes).map((arrow) => ({bow, arrow})));
    if (!round.length) throw new Error(text('live.planning.tick_both'));
    const turns = Array.from({length: Math.min(2000, Math.ceil(rounds))}, () =>
      (order.value === 'shuffled' ? shuffled(round) : round)).flat();
    return api.makePlan({station, turns});
  });
  return fold(text('live.planning.by_hand'),
    el('h3', {}, text('live.planning.bows')), ticks(bowBoxes),
    el('h3', {}, text('live.planning.arrows')), ticks(arrowBoxes),
    el('div', {class: 'fields'}, row(text('live.planning.order'), order)),
    form(fields, text('live.planning.make'), send));
}

const boxes = (things) => things.map(({name}) => el('input', {type: 'checkbox', value: name}));

const ticks = (all) => el('div', {class: 'choices ticks'},
  ...all.map((box) => el('label', {}, box, el('span', {}, box.value))));

const chosen = (all) => all.filter((box) => box.checked).map((box) => box.value);

const select = (options) => el('select', {}, ...options.map(([value, words]) => el('option', {value}, words)));

const row = (words, control) => el('label', {}, el('span', {}, words), control);

const fold = (words, ...content) => el('details', {}, el('summary', {}, words), ...content);

// This is the shuffle of Fisher and Yates: every order is as likely.
function shuffled(round) {
  const turns = [...round];
  for (let i = turns.length - 1; i > 0; i--) {
    const j = Math.floor(Math.random() * (i + 1));
    [turns[i], turns[j]] = [turns[j], turns[i]];
  }
  return turns;
}

/** Opens the sheet with all turns of a plan. `on` has what else can be done: back, end. */
export async function openPlan(plan, on) {
  let whole;
  try {
    whole = await api.readPlan(plan.plan);
  } catch (refusal) {
    return attempt(() => Promise.reject(refusal), '', null);
  }
  const isOver = whole.state === 'ended';
  openSheet(whole.name,
    el('p', {}, `${whole.sentence} ${text('live.planning.tally', whole.done, whole.turns, whole.skipped)}`),
    el('div', {class: 'choices'},
      el('button', {type: 'button', disabled: whole.now?.turn === 1, click: () => on.back(whole)},
        text('live.planning.back')),
      el('button', {type: 'button', disabled: isOver, click: () => on.end(whole)}, text('live.planning.end'))),
    keysButton(),
    el('ol', {class: 'turns'}, ...whole.order.map((turn) => turnItem(turn, whole.now?.turn))));
}

function keysButton() {
  const flip = () => {
    localStorage.setItem(KEYS_KEY, usesKeys() ? 'off' : 'on');
    closeSheet();
    window.dispatchEvent(new Event('castwell-written'));
  };
  return el('button', {type: 'button', click: flip},
    usesKeys() ? text('live.planning.keys_off') : text('live.planning.keys_on'));
}

const MARKS = {shot: `● ${text('live.planning.shot')}`, skipped: `– ${text('live.planning.skipped')}`};

function turnItem({turn, bow, arrow, became}, now) {
  const mark = turn === now ? `▸ ${text('live.planning.now')}` : MARKS[became] ?? '';
  return el('li', turn === now ? {'aria-current': 'step'} : {},
    el('b', {}, text('live.planning.turn', arrow, bow)), el('span', {}, mark));
}
