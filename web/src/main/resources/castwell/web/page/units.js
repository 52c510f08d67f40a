// In which units this person reads. Castwell tells everything in trade units; here they become the person's own.
import {text} from './text.js';

const COOKIE = 'castwell-units';
const YEAR_S = 365 * 24 * 3600;

const TRADE = {
  'ft/s': {symbol: 'ft/s', factor: 1, spoken: text('live.units.feet_per_second')},
  'ft·lbf': {symbol: 'ft·lbf', factor: 1},
  'slug·ft/s': {symbol: 'slug·ft/s', factor: 1},
  gr: {symbol: 'gr', factor: 1, decimals: 1},
  lb: {symbol: 'lb', factor: 1, decimals: 1},
  in: {symbol: 'in', factor: 1, decimals: 2},
};
// How many of the SI unit one of the trade's is: NIST SP 811 (2008), appendix B.
const SI = {
  'ft/s': {symbol: 'm/s', factor: 0.3048, spoken: text('live.units.metres_per_second')},
  'ft·lbf': {symbol: 'J', factor: 1.3558179483314004},
  'slug·ft/s': {symbol: 'kg·m/s', factor: 4.4482216152605},
  gr: {symbol: 'g', factor: 0.06479891, decimals: 2},
  lb: {symbol: 'N', factor: 4.4482216152605, decimals: 0},
  in: {symbol: 'cm', factor: 2.54, decimals: 1},
};

/** "trade" or "si". */
export const chosenUnits = () => (document.cookie.split('; ').includes(`${COOKIE}=si`) ? 'si' : 'trade');

/** The person's unit for a trade one: {symbol, factor, decimals}. */
export const unitFor = (trade) => (chosenUnits() === 'si' ? SI : TRADE)[trade] ?? {symbol: trade, factor: 1};

/** A value in trade units as the person reads it; what is not known stays so. */
export const here = (value, trade) => (typeof value === 'number' ? value * unitFor(trade).factor : value);

/** Has the buttons with `data-units` choose. */
export function watchUnits() {
  for (const button of document.querySelectorAll('[data-units]')) {
    button.setAttribute('aria-pressed', String(button.dataset.units === chosenUnits()));
    button.addEventListener('click', () => {
      document.cookie = `${COOKIE}=${button.dataset.units}; Path=/; Max-Age=${YEAR_S}; SameSite=Strict`;
      location.reload();
    });
  }
}
