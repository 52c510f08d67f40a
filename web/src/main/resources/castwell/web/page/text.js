// What is said to people, from the one file of texts; the scripts themselves hold no words.
import texts from '/texts.js';

const PLACE = /\{(\d)(?:\|([^|}]*)\|([^|}]*))?}/g;

/**
 * A text by its key. {0} in it stands for the first argument, {0|one|many} for one of two words:
 * the first if that argument is 1.
 */
export function text(key, ...given) {
  return filled(texts[key], ...given);
}

/** Fills arguments into words that come from elsewhere, in the same way. */
export function filled(words, ...given) {
  return words.replace(PLACE, (_, place, one, many) => {
    const argument = String(given[place]);
    if (one === undefined) return argument;
    return argument === '1' ? one : many;
  });
}
