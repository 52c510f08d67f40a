// The shots of one bow and arrow as dots on a speed axis, with their mean and spread.
import {svg} from './dom.js';
import {groupText, speedFigure, ticks} from './format.js';
import {here, unitFor} from './units.js';

const HEIGHT = 96;
const AXIS_Y = 72;
const MIDDLE_Y = 38;
const MARGIN = 20;
const RADIUS = 6;
const STEP_Y = 13;
const LEAST_SPAN_FPS = 4;

/** A common axis for all groups of an end: [low, high] in ft/s around what counts, null when nothing has a speed. */
export function axisOf(shots) {
  const withSpeed = shots.filter((shot) => shot.speed_fps !== null);
  const counting = withSpeed.filter((shot) => shot.counts);
  const speeds = (counting.length ? counting : withSpeed).map((shot) => shot.speed_fps);
  if (!speeds.length) return null;
  const low = Math.min(...speeds);
  const high = Math.max(...speeds);
  const room = Math.max(LEAST_SPAN_FPS - (high - low), (high - low) * 0.2) / 2;
  return [low - room, high + room];
}

/** Draws one group, `width` CSS pixels wide. A shot beyond the axis is put at its end, with its speed in figures. */
export function drawDots(group, shots, [low, high], width, newestId) {
  const x = (fps) => MARGIN + ((fps - low) / (high - low)) * (width - 2 * MARGIN);
  const picture = svg('svg', {viewBox: `0 0 ${width} ${HEIGHT}`, width, height: HEIGHT, role: 'img',
    'aria-label': groupText(group)});
  picture.append(...spread(group, x), ...axis(low, high, width, x));
  const placed = [];
  for (const shot of shots.filter((s) => s.speed_fps !== null)) {
    const at = Math.min(width - MARGIN, Math.max(MARGIN, x(shot.speed_fps)));
    const y = freeRow(placed, at);
    placed.push({at, y});
    picture.append(...mark(shot, at, y, at !== x(shot.speed_fps), shot.shot_id === newestId));
  }
  return picture;
}

function spread({mean_fps: mean, sd_fps: sd, n}, x) {
  if (n === 0 || mean === null) return [];
  const line = svg('path', {class: 'mean', d: `M${x(mean)} 8V${AXIS_Y}`});
  if (sd === null) return [line];
  const [left, right] = [x(mean - sd), x(mean + sd)];
  const band = svg('rect', {class: 'sd', x: left, y: 12, width: right - left, height: AXIS_Y - 12});
  return [band, line];
}

function axis(low, high, width, x) {
  const {factor} = unitFor('ft/s');
  const marks = ticks(here(low, 'ft/s'), here(high, 'ft/s'), Math.max(3, Math.floor(width / 70)));
  const labels = marks.map((v) => svg('text', {x: x(v / factor), y: AXIS_Y + 19, 'text-anchor': 'middle'}, String(v)));
  const lines = marks.map((v) => `M${x(v / factor)} ${AXIS_Y}v5`).join('');
  return [svg('path', {class: 'axis', d: `M0 ${AXIS_Y}H${width}${lines}`}), ...labels];
}

// Dots that would cover each other are moved aside, up and down by turns; a full column starts
// over.
function freeRow(placed, at) {
  const near = placed.filter((other) => Math.abs(other.at - at) < 2 * RADIUS);
  const rows = [0, -1, 1, -2, 2].map((row) => MIDDLE_Y + row * STEP_Y);
  return rows.find((y) => near.every((other) => other.y !== y)) ?? rows[near.length % rows.length];
}

function mark(shot, at, y, isBeyond, isNewest) {
  const told = speedFigure(shot).value;
  const marks = [shot.counts ? svg('circle', {class: 'dot', cx: at, cy: y, r: RADIUS}) : cross(at, y)];
  if (isNewest) marks.push(svg('circle', {class: 'newest', cx: at, cy: y, r: RADIUS + 4}));
  if (isBeyond) {
    const toLeft = at <= MARGIN;
    const anchor = toLeft ? 'start' : 'end';
    marks.push(svg('text', {x: at + (toLeft ? 13 : -13), y: y + 5, 'text-anchor': anchor},
      toLeft ? `◂ ${told}` : `${told} ▸`));
  }
  return marks;
}

// Draws a hollow cross: the outline of an X, so that it differs from a dot by its shape alone.
function cross(x, y) {
  const d = 'M-7-4-4-7 0-3 4-7 7-4 3 0 7 4 4 7 0 3-4 7-7 4-3 0Z';
  return svg('path', {class: 'cross', d, transform: `translate(${x} ${y})`});
}
