// The current end: its shots as dots by bow and arrow, and as a list with the newest first.
import {arrange, byId, el, setText} from './dom.js';
import {axisOf, drawDots} from './dots.js';
import {countText, groupText, hintText, speedText, tagText, verdictText, whenText} from './format.js';
import {openShot} from './shot.js';
import {text} from './text.js';

const LEAST_WIDTH = 240;
const items = new Map();

/** Shows the end of a snapshot, or what will begin one. */
export function showEnd(snapshot) {
  const {end, session, rehearsal} = snapshot;
  const shots = end?.shots ?? [];
  const heading = end ? text('live.end.heading', end.number, countText(shots.length)) : text('live.end.this');
  setText(byId('end-heading'), heading);
  setText(byId('end-empty'), end ? '' : text('live.end.begins'));
  setText(byId('session'), sessionText(session, rehearsal));
  showDots(end);
  arrange(byId('shots'), [...shots].reverse().map((shot) => listItem(shot, snapshot)));
  for (const id of items.keys()) {
    if (!shots.some((shot) => shot.shot_id === id)) items.delete(id);
  }
}

/** Draws the dots anew for the present width. */
export function showDots(end) {
  const box = byId('groups');
  const shots = end?.shots ?? [];
  const axis = axisOf(shots);
  const groups = (end?.groups ?? []).map((group) => {
    const own = shots.filter((shot) => shot.bow === group.bow && shot.arrow === group.arrow);
    const width = Math.max(LEAST_WIDTH, box.clientWidth);
    const picture = axis ? [drawDots(group, own, axis, width, shots.at(-1)?.shot_id)] : [];
    return el('figure', {}, el('figcaption', {}, el('b', {}, tagText(group)), el('span', {}, groupText(group))),
      ...picture);
  });
  box.replaceChildren(...groups);
}

function sessionText(session, isRehearsal) {
  if (!session) return isRehearsal ? text('live.end.no_session_pretend') : text('live.end.no_session');
  const {name, shots, counting} = session;
  return text('live.end.session', name, countText(shots), counting, shots - counting);
}

function listItem(shot, snapshot) {
  const item = items.get(shot.shot_id) ?? newItem();
  items.set(shot.shot_id, item);
  const button = item.firstElementChild;
  button.dataset.counts = String(shot.counts);
  button.onclick = () => openShot(shot, snapshot);
  const [speed, verdict, tags, reason] = button.children;
  setText(speed, speedText(shot));
  speed.dataset.known = String(shot.speed_fps !== null);
  setText(verdict, verdictText(shot));
  setText(tags, whenText(shot, tagText(shot)));
  setText(reason, [shot.counts ? '' : shot.reason, hintText(shot)].filter(Boolean).join(' '));
  return item;
}

function newItem() {
  return el('li', {}, el('button', {type: 'button'}, el('b'), el('strong'), el('span'), el('span')));
}
