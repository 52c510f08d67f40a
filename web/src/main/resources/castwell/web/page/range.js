// The range page: fetches what Castwell says, follows it live, and shows it.
import {showAccess} from './access.js';
import {decide, newSession, readRange, typeSpeed} from './api.js';
import {attempt} from './bar.js';
import {byId, setText} from './dom.js';
import {showDots, showEnd} from './end.js';
import {isNewer} from './format.js';
import {fitDigits, showLast, speak} from './last.js';
import {showLink} from './link.js';
import {follow} from './live.js';
import {sayAloud, showChart} from './outdoors.js';
import {planKey, planOrStart, showPlan} from './plan.js';
import {chooseArrow, chooseBow, showTags} from './rack.js';
import {form, openSheet} from './sheet.js';
import {openShot} from './shot.js';
import {chosenStation, settleOn, showStations} from './stations.js';
import {text} from './text.js';
import {showTrouble} from './trouble.js';
import {watchUnits} from './units.js';

const SOON_MS = 150;
const RETRY_MS = 2000;
const LOOK_AGAIN_MS = 20000;

let snapshot = null;
let clockAheadMs = 0;
let lastRequest = 0;
let lastShotEvent = 0;
let lastPlanEvent = 0;
let waiting = 0;
let isFollowing = false;
const lost = {};

async function refetch() {
  const request = ++lastRequest;
  const [shotEvent, planEvent] = [lastShotEvent, lastPlanEvent];
  try {
    const answer = await readRange(chosenStation());
    if (request !== lastRequest) return;
    // What arrived while this answer was on its way is newer than the answer; the next fetch
    // includes it.
    if (snapshot?.station === answer.station) {
      if (shotEvent !== lastShotEvent) answer.last = snapshot.last;
      if (planEvent !== lastPlanEvent) answer.plan = snapshot.plan;
    }
    accept(answer);
  } catch (refusal) {
    if (refusal.status === 404) settleOn('');
    connected('answers', false);
    setTimeout(refetchSoon, RETRY_MS);
  }
}

function refetchSoon() {
  if (waiting) return;
  waiting = setTimeout(() => {
    waiting = 0;
    refetch();
  }, SOON_MS);
}

function accept(answer) {
  if (answer.stations.length > 1) settleOn(answer.station);
  if (snapshot && snapshot.station !== answer.station) document.title = text('live.range.title', answer.station);
  snapshot = answer;
  clockAheadMs = Date.parse(answer.now) - Date.now();
  if (!isFollowing) follow(answer.event, {event: onEvent, connected: onConnected});
  isFollowing = true;
  connected('answers', true);
  show();
}

function show() {
  byId('rehearsal').hidden = !snapshot.rehearsal;
  setText(byId('version'), text('live.range.version', snapshot.version));
  showTheLink();
  showTrouble(snapshot);
  showTags(snapshot);
  showTheLast();
  showPlan(snapshot);
  showEnd(snapshot);
  showChart(snapshot.tags.bow);
}

function showTheLink() {
  if (!snapshot) return;
  showStations(snapshot.stations, snapshot.station, refetch);
  showLink(snapshot.stations, snapshot.station, Date.now() + clockAheadMs);
}

function showTheLast() {
  const shots = snapshot.end?.shots ?? [];
  const at = shots.findIndex((shot) => shot.shot_id === snapshot.last?.shot_id);
  showLast(snapshot.last, at < 0 ? '' : text('live.range.shot', at + 1));
}

function onEvent(kind, data) {
  if (kind === 'link') return onLink(data);
  if (kind === 'store') return onStore(data);
  if (kind === 'shot' && data.station === snapshot.station) onShot(data);
  if (kind === 'plan' && data.plan && data.station === snapshot.station) onPlan(data);
  if (concerns(data.station)) refetchSoon();
}

// Whether an event concerns this page. Events of other stations don't, and those without a station,
// such as the rack's, concern everybody.
const concerns = (station) => !station || station === snapshot.station || station === chosenStation();

function onShot(shot) {
  const isSame = shot.shot_id === snapshot.last?.shot_id;
  if (!isSame && !isNewer(shot, snapshot.last)) return;
  lastShotEvent++;
  snapshot.last = shot;
  showTheLast();
  sayAloud(speak(shot));
}

function onPlan(plan) {
  lastPlanEvent++;
  snapshot.plan = plan;
  showPlan(snapshot);
}

function onLink(link) {
  const others = snapshot.stations.filter((s) => s.station !== link.station);
  const isKnown = others.length < snapshot.stations.length;
  snapshot.stations = isKnown
    ? snapshot.stations.map((s) => (s.station === link.station ? link : s))
    : [...others, link];
  showTheLink();
}

function onStore(store) {
  snapshot.stores = snapshot.stores.map((s) => (s.station === store.station ? store : s));
  showTrouble(snapshot);
}

// What has no number of its own, such as the link's state, may have changed during a break, so it
// is fetched.
function onConnected(yes) {
  connected('feed', yes);
  if (yes) refetchSoon();
}

// There are two ways to Castwell, the answers and the feed. While either fails, the link's state is
// not known.
function connected(way, yes) {
  lost[way] = !yes;
  const isLost = Object.values(lost).includes(true);
  byId('lost').hidden = !isLost;
  byId('link').hidden = isLost;
}

function typeASpeed() {
  const fields = [{name: 'speed_fps', label: text('live.range.speed'), unit: 'ft/s', kind: 'number', needed: true},
    {name: 'note', label: text('live.range.note'), kind: 'text'}];
  let shotId = '';
  const keep = (reading) => attempt(async () => {
    shotId = (await typeSpeed(snapshot.station, reading)).shot_id;
  }, text('live.range.typed'), () => decide(shotId, false, text('live.range.typed_by_mistake')));
  openSheet(text('live.range.type_a_speed'), form(fields, text('live.range.enter'), keep));
}

byId('typed').addEventListener('click', () => snapshot && typeASpeed());
byId('bow-chart-fold').addEventListener('toggle', () => snapshot && showChart(snapshot.tags.bow));
byId('bow').addEventListener('click', () => snapshot && chooseBow(snapshot));
byId('arrow').addEventListener('click', () => snapshot && chooseArrow(snapshot));
byId('plan-more').addEventListener('click', () => planOrStart(snapshot));
byId('plan-open').addEventListener('click', () => snapshot && planOrStart(snapshot));
document.addEventListener('keydown', planKey);
byId('verdict').addEventListener('click', () => openShot(snapshot.last, snapshot));
byId('new-session').addEventListener('click', () => snapshot &&
  attempt(() => newSession(snapshot.station), text('live.range.new_session'), null));
window.addEventListener('popstate', refetch);
window.addEventListener('castwell-written', refetchSoon);
window.addEventListener('online', refetchSoon);
new ResizeObserver(() => {
  fitDigits();
  if (snapshot) showDots(snapshot.end);
}).observe(document.body);
document.addEventListener('visibilitychange', () => document.hidden || refetchSoon());
setInterval(showTheLink, 1000);
// A phone that was carried out of the network may never get an error from the feed; fetching now
// and then reveals it.
setInterval(refetchSoon, LOOK_AGAIN_MS);
watchUnits();
refetch();
showAccess();
