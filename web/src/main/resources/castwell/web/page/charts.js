// Draws the charts that a page brings as data, all in one way: axes, dots with whiskers, lines,
// bands, outlines. Colour only repeats what shape and dash tell.
const d3 = window.d3;

const ROW = 56;
const HEIGHT = 340;
const LEFT = 56;
const RIGHT = 16;
const TOP = 12;
const BOTTOM = 52;
const RADIUS = 6;
const CAP = 6;
const ROOM = 0.06;
const MINUTE_MS = 60000;

const SHAPES = [d3.symbolCircle, d3.symbolSquare, d3.symbolTriangle, d3.symbolDiamond, d3.symbolStar, d3.symbolWye,
  d3.symbolCross];
const STYLES = ['FIRST', 'SECOND', 'THIRD', 'FOURTH', 'FIFTH', 'SIXTH', 'SEVENTH'];
const ASIDE_D = 'M-7-4-4-7 0-3 4-7 7-4 3 0 7 4 4 7 0 3-4 7-7 4-3 0Z';

/** Draws every chart under `root`. */
export function drawCharts(root) {
  root.querySelectorAll('[data-chart]').forEach(drawChart);
}

/** Draws a place's chart, and draws it anew whenever the place changes its width. */
export function drawChart(place) {
  const chart = JSON.parse(place.dataset.chart);
  let drawn = 0;
  const draw = () => {
    const width = Math.floor(place.clientWidth);
    if (width > 0 && width !== drawn) {
      drawn = width;
      drawAt(place, chart, width);
    }
  };
  new ResizeObserver(draw).observe(place);
  draw();
}

function drawAt(place, chart, width) {
  const isRows = Boolean(chart.y.names);
  const height = isRows ? chart.y.names.length * ROW + TOP + BOTTOM : Math.min(HEIGHT, Math.max(260, width * 0.75));
  const x = scale(chart.x, chart.marks, 'x', [isRows ? RIGHT : LEFT, width - RIGHT]);
  const y = isRows
    ? d3.scaleLinear([-0.5, chart.y.names.length - 0.5], [TOP, height - BOTTOM])
    : scale(chart.y, chart.marks, 'y', [height - BOTTOM, TOP]);
  const svg = d3.create('svg').attr('viewBox', `0 0 ${width} ${height}`).attr('width', width).attr('height', height)
    .attr('role', 'img').attr('aria-label', chart.sentence);
  axes(svg, chart, x, y, width, height);
  const id = `clip-${Math.random().toString(36).slice(2)}`;
  svg.append('clipPath').attr('id', id).append('rect').attr('x', isRows ? 0 : LEFT).attr('y', 0)
    .attr('width', width - (isRows ? 0 : LEFT)).attr('height', height - BOTTOM);
  const inside = svg.append('g').attr('clip-path', `url(#${id})`);
  for (const mark of inOrder(chart.marks)) DRAW[mark.kind](inside, mark, x, y, width, height);
  if (isRows) rowNames(svg, chart.y.names, y);
  const told = document.createElement('p');
  told.className = 'told';
  place.replaceChildren(legend(chart.marks), svg.node(), told);
  pointAt(svg.node(), told, chart, x, y);
}

// Large marks are drawn first, so that small ones lie on top of them.
const ORDER = ['band', 'region', 'level', 'line', 'points'];
const inOrder = (marks) => [...marks].sort((a, b) => ORDER.indexOf(a.kind) - ORDER.indexOf(b.kind));

function scale(axis, marks, side, range) {
  const values = marks.flatMap((mark) => valuesOf(mark, side)).filter(Number.isFinite);
  if (axis.low !== undefined) values.push(axis.low, axis.high);
  let [low, high] = d3.extent(values);
  if (low === undefined) [low, high] = [0, 1];
  const room = (high - low || (axis.dates ? MINUTE_MS : Math.abs(high)) || 1) * ROOM;
  const made = axis.dates ? d3.scaleTime() : d3.scaleLinear();
  const isFromNought = axis.low === 0 && low >= 0;
  return made.domain([isFromNought ? 0 : low - room, high + room]).range(range);
}

function valuesOf(mark, side) {
  switch (mark.kind) {
    case 'points':
      return mark.points.flatMap((p) =>
        (mark.along === side && p.low !== undefined ? [p.low, p[side], p.high] : [p[side]]));
    case 'band': return side === 'x' ? mark.x : [...mark.low, ...mark.high];
    case 'level': return mark.axis === side ? [mark.value] : [];
    default: return mark[side];
  }
}

function axes(svg, chart, x, y, width, height) {
  const isRows = Boolean(chart.y.names);
  const foot = height - BOTTOM;
  const ticks = Math.max(3, Math.floor(width / 120));
  const bottom = d3.axisBottom(x).ticks(ticks).tickSizeOuter(0).tickSizeInner(-(foot - TOP));
  svg.append('g').attr('class', 'scale').attr('transform', `translate(0 ${foot})`).call(bottom);
  svg.append('text').attr('class', 'label').attr('x', width - RIGHT).attr('y', height - 8).attr('text-anchor', 'end')
    .text(chart.x.label);
  if (isRows) return;
  const left = d3.axisLeft(y).ticks(6).tickSizeOuter(0).tickSizeInner(-(width - LEFT - RIGHT));
  svg.append('g').attr('class', 'scale').attr('transform', `translate(${LEFT} 0)`).call(left);
  svg.append('text').attr('class', 'label').attr('transform', `translate(14 ${TOP}) rotate(-90)`)
    .attr('text-anchor', 'end').text(chart.y.label);
}

// Names are drawn over the marks, so that no line runs through a name.
function rowNames(svg, names, y) {
  svg.append('g').selectAll('text').data(names).join('text').attr('class', 'row-name')
    .attr('x', RIGHT).attr('y', (_, i) => y(i) - 14).text((name) => name);
}

const symbol = (style) => (style === 'ASIDE' ? ASIDE_D : d3.symbol(SHAPES[Math.max(0, STYLES.indexOf(style))], 110)());

const DRAW = {
  points(g, mark, x, y) {
    const at = g.append('g').attr('class', `mark ${mark.style}`).selectAll('g').data(mark.points).join('g');
    const [isX, whiskers] = [mark.along === 'x', at.filter((p) => p.low !== undefined)];
    const across = (at, height) => `M${at} ${height - CAP}v${2 * CAP}`;
    const upright = (at, height) => `M${at - CAP} ${height}h${2 * CAP}`;
    whiskers.append('path').attr('class', 'whisker').attr('d', (p) => (isX
      ? `M${x(p.low)} ${y(p.y)}H${x(p.high)}${across(x(p.low), y(p.y))}${across(x(p.high), y(p.y))}`
      : `M${x(p.x)} ${y(p.low)}V${y(p.high)}${upright(x(p.x), y(p.low))}${upright(x(p.x), y(p.high))}`));
    at.append('path').attr('class', 'dot').attr('d', symbol(mark.style))
      .attr('transform', (p) => `translate(${x(p.x)} ${y(p.y)})`);
  },
  line(g, mark, x, y) {
    const line = d3.line((_, i) => x(mark.x[i]), (v) => y(v)).defined(Number.isFinite);
    g.append('path').attr('class', `mark line ${mark.style}`).attr('d', line(mark.y));
  },
  band(g, mark, x, y) {
    const area = d3.area().x((_, i) => x(mark.x[i])).y0((v) => y(v)).y1((_, i) => y(mark.high[i]))
      .defined((v, i) => Number.isFinite(v) && Number.isFinite(mark.high[i]));
    g.append('path').attr('class', `mark area ${mark.style}`).attr('d', area(mark.low));
  },
  region(g, mark, x, y) {
    const line = d3.line((_, i) => x(mark.x[i]), (v) => y(v));
    g.append('path').attr('class', `mark area outline ${mark.style}`).attr('d', `${line(mark.y)}Z`);
  },
  level(g, mark, x, y, width, height) {
    const d = mark.axis === 'y' ? `M0 ${y(mark.value)}H${width}` : `M${x(mark.value)} 0V${height}`;
    g.append('path').attr('class', `mark line ${mark.style}`).attr('d', d);
  },
};

// Draws one entry for each name, with the mark's own shape and dash.
function legend(marks) {
  const list = document.createElement('ul');
  list.className = 'legend';
  for (const name of new Set(marks.map((mark) => mark.name).filter(Boolean))) {
    const item = d3.create('li');
    const key = item.append('svg').attr('width', 34).attr('height', 18).attr('aria-hidden', 'true');
    for (const mark of inOrder(marks.filter((m) => m.name === name))) keyOf(key, mark);
    item.append('span').text(name);
    list.append(item.node());
  }
  return list;
}

function keyOf(key, mark) {
  if (mark.kind === 'points') {
    key.append('g').attr('class', `mark ${mark.style}`)
      .append('path').attr('class', 'dot').attr('d', symbol(mark.style)).attr('transform', 'translate(17 9)');
  } else if (mark.kind === 'line' || mark.kind === 'level') {
    key.append('path').attr('class', `mark line ${mark.style}`).attr('d', 'M0 9H34');
  } else {
    key.append('rect').attr('class', `mark area ${mark.kind === 'region' ? 'outline' : ''} ${mark.style}`).attr('x', 1)
      .attr('y', 2).attr('width', 32).attr('height', 14);
  }
}

// Tells of the point next to the finger, below the chart in a line that is always there.
function pointAt(svg, told, {marks}, x, y) {
  const points = marks.filter((mark) => mark.kind === 'points').flatMap((mark) => mark.points).filter((p) => p.label);
  svg.addEventListener('pointermove', (event) => {
    const [px, py] = d3.pointer(event, svg);
    const near = d3.least(points, (p) => Math.hypot(x(p.x) - px, y(p.y) - py));
    told.textContent = near && Math.hypot(x(near.x) - px, y(near.y) - py) < 40 ? near.label : '';
  });
}
