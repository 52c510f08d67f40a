// Pure functions: figures, words and times, in the person's own units. No page, no clock, no network.
import {LEAST_UNCERTAINTIES, TIMES} from './rules.js';
import {filled, text} from './text.js';
import {here, unitFor} from './units.js';

/** Below this many grains per pound of draw weight a wooden bow is treated hard (common practice). */
export const LIGHTEST_GPP = 8;

const SPEED = 'ft/s';
const MOST_TOLD = 0.99;

const isKnown = (value) => typeof value === 'number' && Number.isFinite(value);

/** How many decimals a figure with the standard uncertainty u, above 0, may show. */
export function decimals(u) {
  const enough = LEAST_UNCERTAINTIES.findIndex((least) => u >= least);
  return enough < 0 ? LEAST_UNCERTAINTIES.length - 1 : enough;
}

/** An uncertainty alone, as text: "0.4"; "not known" when it is null or not above 0. */
export function uncertainty(u) {
  return isKnown(u) && u > 0 ? u.toFixed(decimals(u)) : text('live.format.not_known');
}

/**
 * A figure and its uncertainty as text: {value: "152.3", u: "0.4"}. Without an uncertainty the figure
 * gets the decimals of `otherwise` and u is null; without a figure the answer is null.
 */
export function figure(value, u, otherwise = 0) {
  if (!isKnown(value)) return null;
  if (!isKnown(u) || u <= 0) return {value: value.toFixed(otherwise), u: null};
  return {value: value.toFixed(decimals(u)), u: uncertainty(u)};
}

/**
 * Both parts of an uncertainty combined into one (JCGM 100:2008, 5.1.2); null when a part is not
 * known.
 */
export function combined(own, common) {
  return isKnown(own) && isKnown(common) ? Math.hypot(own, common) : null;
}

/** A measured-once figure such as a draw weight, without needless zeros: 52, 27.5. */
export function plain(value, most = 1) {
  return isKnown(value) ? String(Number(value.toFixed(most))) : '?';
}

/** A measured figure given in trade units, as the person reads it: "52 lb", "231 N". */
export function measured(value, trade) {
  const {symbol, decimals = 1} = unitFor(trade);
  return `${plain(here(value, trade), decimals)} ${symbol}`;
}

/** Arrow mass in grains over draw weight in pounds; null when one is not known. */
export function grainsPerPound(massGr, drawWeightLb) {
  return isKnown(massGr) && drawWeightLb > 0 ? massGr / drawWeightLb : null;
}

/** A shot's speed: {value, u} as text, or null. */
export function speedFigure(shot) {
  return figure(here(shot.speed_fps, SPEED), here(combined(shot.speed_u_own_fps, shot.speed_u_common_fps), SPEED));
}

/** A shot's speed as one text: "152.3 ± 0.4", with the unit if it is wanted; or "no speed". */
export function speedText(shot, withUnit = false) {
  const speed = speedFigure(shot);
  if (!speed) return text('live.format.no_speed');
  return [speed.value, speed.u && `± ${speed.u}`, withUnit && unitFor(SPEED).symbol].filter(Boolean).join(' ');
}

/** Bow and arrow as one text. */
export function tagText({bow, arrow}) {
  return `${bow ?? text('live.format.no_bow')} · ${arrow ?? text('live.format.no_arrow')}`;
}

/** Says whether a shot counts, in words with a shape: colour alone never tells. */
export function verdictText({counts}) {
  return counts ? `● ${text('live.format.counts')}` : `✕ ${text('live.format.doesnt_count')}`;
}

/** Says when a shot was fired, behind the words in `before`, and whether a person judged it. */
export function whenText({fired_at: firedAt, judged_by: by}, ...before) {
  const byHand = by === 'person' ? text('live.format.by_hand') : '';
  return [...before, clockTime(firedAt), byHand].filter(Boolean).join(' · ');
}

// Which bow and arrow fit a shot better than its tags, in few words; '' when nothing does.
function misfitText({misfit}) {
  return misfit ? `▲ ${text('live.format.misfit', tagText(misfit.fits[0]))}` : '';
}

// How sure it is that a shot is a stray, in few words; '' when reports would keep it.
function strayText({stray}) {
  if (!stray?.set_aside) return '';
  const {chance} = stray;
  return `▲ ${chance > MOST_TOLD ? text('live.format.stray_surely') : text('live.format.stray', Math.round(100 * chance))}`;
}

/** What is odd about a shot, the most likely cause first; '' when nothing is. */
export function hintText(shot) {
  return misfitText(shot) || strayText(shot);
}

/** "1 shot", "5 shots". */
export function countText(shots) {
  return text('live.format.shots', shots);
}

/** A group's mean and spread in words: "5 count, mean 152.3 ft/s, sd 0.9; 1 set aside". */
export function groupText({n, set_aside, mean_fps, sd_fps}) {
  const aside = set_aside > 0 ? text('live.format.aside', set_aside) : text('live.format.none_aside');
  if (n === 0 || !isKnown(mean_fps)) return text('live.format.group_none', aside);
  const mean = figure(here(mean_fps, SPEED), here(sd_fps, SPEED), 1);
  const unit = unitFor(SPEED).symbol;
  if (n === 1) return text('live.format.group_one', mean.value, unit, aside);
  return text('live.format.group', n, mean.value, unit, mean.u ?? text('live.format.not_known'), aside);
}

/** What to do to learn a figure that is not known. `what` is a key of a shot. */
export function remedy(what, shot) {
  if (!isKnown(shot.speed_fps) && what !== 'grains_per_pound') return text('live.format.no_speed_measured');
  if (!shot.arrow) return text('live.format.choose_arrow');
  if (!isKnown(shot.arrow_mass_gr)) return text('live.format.weigh_arrow');
  if (what === 'grains_per_pound') return shot.bow ? text('live.format.weigh_draw') : text('live.format.choose_bow');
  if (what !== 'speed_at_bow_fps') return text('live.format.needs_gates');
  return shot.device === null ? text('live.format.not_typed') : text('live.format.needs_diameter');
}

/** Is passage a newer than passage b? By the moment it was fired; an absent b is older than any. */
export function isNewer(a, b) {
  return !b || Date.parse(a.fired_at) >= Date.parse(b.fired_at);
}

/** "12 s", "3 min", "2 h", "4 days": a duration rounded down; negative ones are 0. */
export function duration(seconds) {
  const whole = Math.max(0, Math.floor(seconds));
  const unit = TIMES.find(({from}) => whole >= from);
  return filled(unit.words, Math.floor(whole / unit.seconds));
}

/** The person's own clock time of an instant: "14:03:22". */
export function clockTime(instant) {
  return new Date(instant).toLocaleTimeString('en-GB');
}

/** A day, or a minute within it, for reading: "2026-04-01", "2026-04-01 14:03". */
export function dayAndMinute(state) {
  return state.slice(0, 16).replace('T', ' ');
}

/** Round axis ticks covering low..high, about `wanted` of them, in ascending order. */
export function ticks(low, high, wanted) {
  const rough = (high - low) / wanted;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((m) => m * power).find((s) => s >= rough);
  const first = Math.ceil(low / step);
  const last = Math.floor(high / step);
  return Array.from({length: last - first + 1}, (_, i) => Number(((first + i) * step).toPrecision(12)));
}
