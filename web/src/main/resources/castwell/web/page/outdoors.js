// Helps when the hands are full: speeds spoken aloud, the screen kept on, and the chosen bow's
// chart growing shot by shot. Each is the person's own choice, kept in their browser.
import {byId} from './dom.js';

const VOICE = 'castwell.voice';
const LIGHT = 'castwell.screen';
const CHART_SOON_MS = 400;

let lock = null;
let shownBow = '';
let timer = 0;

const isOn = (key) => localStorage.getItem(key) === 'on';

/** Says a sentence aloud, if the person wants it and the browser has a voice. */
export function sayAloud(words) {
  if (!isOn(VOICE) || !window.speechSynthesis) return;
  speechSynthesis.cancel(); // Only the newest shot matters, so an older sentence is cut short.
  const said = new SpeechSynthesisUtterance(words);
  said.lang = document.documentElement.lang;
  speechSynthesis.speak(said);
}

function toggle(button, key, changed) {
  const show = () => button.setAttribute('aria-pressed', String(isOn(key)));
  button.addEventListener('click', () => {
    localStorage.setItem(key, isOn(key) ? 'off' : 'on');
    show();
    changed();
  });
  show();
}

// Keeps the screen on. The browser lets go by itself when the page is hidden, and may refuse on
// battery or without TLS.
async function keepScreenOn() {
  if (!isOn(LIGHT) || document.hidden) {
    await lock?.release();
    lock = null;
    return;
  }
  lock = await navigator.wakeLock.request('screen').catch(() => null);
}

/** Shows the chosen bow's speeds over arrow mass, if the person has that open. */
export function showChart(bow) {
  const place = byId('bow-chart');
  byId('bow-chart-fold').hidden = !bow;
  if (!bow || !byId('bow-chart-fold').open) return;
  if (bow !== shownBow) place.replaceChildren();
  shownBow = bow;
  clearTimeout(timer);
  timer = setTimeout(() => fetchChart(place, bow), CHART_SOON_MS);
}

async function fetchChart(place, bow) {
  const page = fetch(`/bows/${encodeURIComponent(bow)}/speed`);
  const [answer, {drawCharts}] = await Promise.all([page, import('./charts.js')]).catch(() => [null, {}]);
  if (!answer?.ok || bow !== shownBow) return;
  const chart = new DOMParser().parseFromString(await answer.text(), 'text/html').querySelector('.chart');
  const wasOpen = place.querySelector('details')?.open ?? false;
  place.replaceChildren(chart);
  const numbers = chart.querySelector('details');
  if (numbers) numbers.open = wasOpen;
  drawCharts(place);
}

toggle(byId('voice'), VOICE, () => sayAloud(byId('voice').dataset.hello));
byId('voice').hidden = !window.speechSynthesis;
toggle(byId('screen'), LIGHT, keepScreenOn);
byId('screen').hidden = !navigator.wakeLock;
if (navigator.wakeLock) {
  document.addEventListener('visibilitychange', keepScreenOn);
  keepScreenOn();
}
