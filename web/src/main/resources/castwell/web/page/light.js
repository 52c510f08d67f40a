// Shows the light at the gates while somebody turns their emitters: a bar each, with the best so
// far marked.
import {byId, el, setText, svg} from './dom.js';
import {levelText} from './link.js';
import {text} from './text.js';

const TOP = 1023;
const GATES = {a: text('live.light.gate_a'), b: text('live.light.gate_b')};

/** Readings this far below the best may be noise: a hundredth of the best, or a few steps. */
const within = (best) => best - Math.max(4, best / 100);

let readings = {};

/** Says what to do, by the reading now, the one before and the best, in a shape and words. */
export function advice({now, before, best}) {
  if (now === null) return '';
  const isGrowing = now > before + 4;
  if (now >= within(best)) return isGrowing ? `▲ ${text('live.light.growing')}` : `● ${text('live.light.best')}`;
  return isGrowing ? `▲ ${text('live.light.growing_again')}` : `▼ ${text('live.light.below', best)}`;
}

/** Takes in the light of one heartbeat; null when no board beats. */
export function showLight(light) {
  for (const gate of Object.keys(GATES)) {
    const now = light?.[`light_${gate}`] ?? null;
    const {now: before = null, best = 0} = readings[gate] ?? {};
    readings[gate] = {now, before: before ?? now, best: Math.max(best, now ?? 0)};
    show(gate, readings[gate], light?.[`gate_${gate}`]);
  }
}

/** Forgets the best marks. */
export function beginAnew() {
  for (const reading of Object.values(readings)) reading.best = reading.now ?? 0;
  for (const [gate, reading] of Object.entries(readings)) show(gate, reading, byId(`gate-${gate}`).dataset.level);
}

function show(gate, reading, level) {
  const {now, best} = reading;
  const section = byId(`gate-${gate}`) ?? make(gate);
  section.dataset.blocked = String(level === 'blocked');
  section.dataset.level = level ?? '';
  const part = (name) => section.querySelector(`.${name}`);
  setText(part('figure'), now === null ? '– – –' : String(now));
  setText(part('level'), level ? levelText(level) : text('live.light.no_reading'));
  setText(part('advice'), advice(reading));
  part('now').setAttribute('width', now ?? 0);
  part('best').setAttribute('x', Math.max(0, best - 8));
  part('best').setAttribute('width', best ? 8 : 0);
  const meter = part('meter');
  meter.setAttribute('aria-valuenow', now ?? 0);
  meter.setAttribute('aria-valuetext', now === null ? text('live.light.no_reading') : String(now));
}

function make(gate) {
  const name = gate.toUpperCase();
  const bar = svg('svg',
    {class: 'bar-of-light', viewBox: `0 0 ${TOP} 56`, preserveAspectRatio: 'none', 'aria-hidden': 'true'});
  bar.append(svg('rect', {class: 'now', y: 6, height: 44, width: 0}),
    svg('rect', {class: 'best', height: 56, width: 0}));
  const meter = el('div', {class: 'meter', role: 'meter', 'aria-label': text('live.light.meter', name, TOP),
    'aria-valuemin': 0, 'aria-valuemax': TOP}, bar);
  const reading = el('p', {class: 'reading'}, el('b', {class: 'figure'}), el('span', {}, text('live.light.of', TOP)),
    el('span', {class: 'level'}));
  const section = el('section', {class: 'gate', id: `gate-${gate}`, 'aria-label': text('live.light.gate', name)},
    el('h3', {}, GATES[gate]), reading, meter, el('p', {class: 'advice'}));
  byId('bars').append(section);
  return section;
}
