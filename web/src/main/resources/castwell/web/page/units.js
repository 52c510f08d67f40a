// The units in which this person reads. Castwell tells everything in trade units; here they become
// the person's own.
import {SI} from './rules.js';
import {text} from './text.js';

const COOKIE = 'castwell-units';
const YEAR_S = 365 * 24 * 3600;

// A value that somebody measured once has at most so many decimals.
const DECIMALS = {gr: 1, g: 2, lb: 1, N: 0, in: 2, cm: 1};
const SPOKEN = {'ft/s': text('live.units.feet_per_second'), 'm/s': text('live.units.metres_per_second')};

/** The chosen units: "trade" or "si". */
export const chosenUnits = () => (document.cookie.split('; ').includes(`${COOKIE}=si`) ? 'si' : 'trade');

/** The person's unit for a trade one: {symbol, factor, decimals, spoken}. */
export function unitFor(trade) {
  const {symbol, factor} = (chosenUnits() === 'si' && SI[trade]) || {symbol: trade, factor: 1};
  return {symbol, factor, decimals: DECIMALS[symbol], spoken: SPOKEN[symbol]};
}

/** A value in trade units as the person reads it; what is not known stays so. */
export const here = (value, trade) => (typeof value === 'number' ? value * unitFor(trade).factor : value);

/** Makes the buttons with `data-units` choose the units. */
export function watchUnits() {
  for (const button of document.querySelectorAll('[data-units]')) {
    button.setAttribute('aria-pressed', String(button.dataset.units === chosenUnits()));
    button.addEventListener('click', () => {
      document.cookie = `${COOKIE}=${button.dataset.units}; Path=/; Max-Age=${YEAR_S}; SameSite=Strict`;
      location.reload();
    });
  }
}
