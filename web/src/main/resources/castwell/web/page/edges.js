// A small picture of what both gates saw of one shot over time, and the same as a table.
import {el, svg} from './dom.js';
import {text} from './text.js';

const WIDTH = 340;
const LEFT = 24;
const ROW = 26;
const BAR = 16;
const GATES = ['A', 'B'];
const PARTS = {
  front: text('live.edges.front'),
  tail: text('live.edges.tail'),
  flutter: text('live.edges.flutter'),
  bounce: text('live.edges.bounce'),
  light: text('live.edges.light'),
  lamp: text('live.edges.lamp'),
  other: text('live.edges.other'),
  unknown: text('live.edges.unknown'),
};

/** The figure of a shot's edges, each with its part in the story. */
export function edgesFigure(edges) {
  const told = edges.map((edge) => ({...edge, ms: edge.micros / 1000}));
  return el('figure', {class: 'edges'}, picture(told), el('figcaption', {}, text('live.edges.caption')),
    el('details', {}, el('summary', {}, text('live.edges.each', edges.length)), table(told)));
}

function picture(edges) {
  const last = Math.max(...edges.map(({ms}) => ms));
  const step = stepFor(last);
  const end = last + step / 4;
  const x = (ms) => LEFT + (ms / end) * (WIDTH - LEFT - 8);
  const height = GATES.length * ROW + 24;
  const rows = GATES.flatMap((gate, row) => bars(edges.filter((edge) => edge.gate === gate), end)
    .map(({from, to, part}) => svg('rect', {
      class: part, x: x(from), y: row * ROW + 5, height: BAR, width: Math.max(x(to) - x(from), 1.5),
    })));
  const names = GATES.map((gate, row) => svg('text', {class: 'gate', x: 2, y: row * ROW + 18}, gate));
  const ticks = [];
  for (let ms = 0; ms <= end; ms += step) {
    ticks.push(svg('line', {x1: x(ms), x2: x(ms), y1: 0, y2: GATES.length * ROW + 4}),
      svg('text', {x: x(ms), y: height - 4, 'text-anchor': ms ? 'middle' : 'start'}, ms ? String(ms) : text('live.edges.zero')));
  }
  return svg('svg', {viewBox: `0 0 ${WIDTH} ${height}`, role: 'img', 'aria-label': sentence(edges)},
    svg('g', {class: 'time'}, ...ticks), ...names, ...rows);
}

/** From "blocked" to "clear", each as a bar: the arrow's own between its front and its tail. */
function bars(edges, end) {
  const all = [];
  let from = null;
  let inside = false;
  for (const {kind, part, ms} of edges) {
    if (part === 'front') inside = true;
    if (kind === 'B') from = ms;
    else if (kind === 'C') {
      all.push({from: from ?? 0, to: ms, part: inside ? 'arrow' : 'other'});
      from = null;
    } else all.push({from: ms, to: ms, part: 'other'});
    if (part === 'tail') inside = false;
  }
  return from === null ? all : [...all, {from, to: end, part: inside ? 'arrow' : 'other'}];
}

function stepFor(last) {
  const rough = last / 4;
  const power = 10 ** Math.floor(Math.log10(Math.max(rough, 1e-3)));
  return [1, 2, 5, 10].map((times) => times * power).find((step) => step >= rough);
}

function sentence(edges) {
  return text('live.edges.sentence', ...GATES.map((gate) => edges.filter((edge) => edge.gate === gate).length));
}

function table(edges) {
  const rows = edges.map(({ms, gate, part}) => el('tr', {}, el('td', {}, ms.toFixed(3)), el('td', {}, gate),
    el('td', {}, PARTS[part])));
  return el('table', {}, el('thead', {}, el('tr', {}, el('th', {scope: 'col'}, text('live.edges.when')),
    el('th', {scope: 'col'}, text('live.edges.gate')), el('th', {scope: 'col'}, text('live.edges.was')))),
  el('tbody', {}, ...rows));
}
