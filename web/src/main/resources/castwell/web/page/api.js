// Asks Castwell, and tells it things. A refusal becomes an Error whose message is one sentence for
// the person.
import {text} from './text.js';

const PATIENCE_MS = 8000;

/** Reads the range as it is now, for a station; '' stands for the first one. */
export function readRange(station) {
  return ask(station ? `/api/range?station=${encodeURIComponent(station)}` : '/api/range', {cache: 'no-store'});
}

/** Reads a shot with all that is known of it. */
export const readShot = (id) => ask(`/api/shots/${encodeURIComponent(id)}`, {cache: 'no-store'});

export const readStations = () => ask('/api/stations', {cache: 'no-store'});

export const readHealth = (station) => ask(`/api/health?station=${encodeURIComponent(station)}`, {cache: 'no-store'});

export const putTags = (station, bow, arrow) => write('PUT', '/api/tags', {station, bow, arrow});

export const newSession = (station) => write('POST', '/api/sessions', {station});

export const addBow = (bow) => write('POST', '/api/bows', bow);

export const addBowState = (name, state) => write('POST', `/api/bows/${encodeURIComponent(name)}/states`, state);

export const addArrow = (arrow) => write('POST', '/api/arrows', arrow);

/**
 * Decides whether a shot counts. `counts` is true, false, or null to leave it to the rules again.
 */
export const decide = (shotId, counts, reason) =>
  write('POST', `/api/shots/${encodeURIComponent(shotId)}/decision`, {counts, reason});

export const retag = (shotId, bow, arrow, why) =>
  write('POST', `/api/shots/${encodeURIComponent(shotId)}/tags`, {bow, arrow, why});

export const typeSpeed = (station, reading) =>
  write('POST', `/api/stations/${encodeURIComponent(station)}/readings`, reading);

export const readPlans = (station) => ask(`/api/plans?station=${encodeURIComponent(station)}`, {cache: 'no-store'});

export const readPlan = (plan) => ask(`/api/plans/${plan}`, {cache: 'no-store'});

export const makePlan = (plan) => write('POST', '/api/plans', plan);

/**
 * Tells Castwell a word about a plan. `turn` is the one that the person has before them, so that
 * nothing is said of another.
 */
export const tellPlan = (plan, word, turn) => write('POST', `/api/plans/${plan}/events`, {do: word, turn});

export const readAccess = () => ask('/api/admission', {cache: 'no-store'});

export const enter = (key) => write('POST', '/api/admission', {key});

export const leave = () => write('DELETE', '/api/admission', {});

/** Sends something to Castwell, and returns its answer. */
export async function write(method, path, body, patienceMs = PATIENCE_MS) {
  const headers = {'Content-Type': 'application/json'};
  const answer = await ask(path, {method, headers, body: JSON.stringify(body)}, patienceMs);
  window.dispatchEvent(new Event('castwell-written'));
  return answer;
}

async function ask(path, options, patienceMs = PATIENCE_MS) {
  let response;
  try {
    response = await fetch(path, {...options, signal: AbortSignal.timeout(patienceMs)});
  } catch {
    throw new Error(text('live.api.no_answer'));
  }
  const answer = await response.json().catch(() => ({}));
  if (response.ok) return answer;
  // Not even watching is open here; the page for entering is one of its own.
  if (response.status === 401 && !options.method) location.assign('/enter');
  const refusal = new Error(answer.detail ?? text('live.api.refused', response.status));
  refusal.status = response.status;
  throw refusal;
}
