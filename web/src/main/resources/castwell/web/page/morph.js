// Changes a part of the page into what it is to be, and leaves alone what is like that already:
// what somebody opened, ticked, focused or scrolled to stays. Elements with an id are recognised
// wherever they have moved to.

const LEFT_TO_PEOPLE = 'open';

/**
 * Changes `now` into `wanted`; `redraw` is called with each place of a chart whose data has
 * changed.
 */
export function morph(now, wanted, redraw) {
  if (now.nodeType !== Node.ELEMENT_NODE) {
    if (now.data !== wanted.data) now.data = wanted.data;
    return;
  }
  if (isFilledIn(now)) return;
  if (now.dataset.chart !== undefined) {
    if (now.dataset.chart !== wanted.dataset.chart) {
      now.replaceWith(wanted);
      redraw(wanted);
    }
    return;
  }
  morphAttributes(now, wanted);
  morphChildren(now, wanted, redraw);
}

function morphAttributes(now, wanted) {
  for (const {name, value} of wanted.attributes) {
    if (name !== LEFT_TO_PEOPLE && now.getAttribute(name) !== value) now.setAttribute(name, value);
  }
  for (const {name} of [...now.attributes]) {
    if (name !== LEFT_TO_PEOPLE && !wanted.hasAttribute(name)) now.removeAttribute(name);
  }
}

function morphChildren(now, wanted, redraw) {
  const ids = new Set([...wanted.children].map((child) => child.id).filter(Boolean));
  for (const child of [...now.children]) if (child.id && !ids.has(child.id)) child.remove();
  const known = new Map([...now.children].filter((child) => child.id).map((child) => [child.id, child]));
  let at = now.firstChild;
  for (const child of [...wanted.childNodes]) {
    const same = known.get(child.id) ?? (at && isAlike(at, child) ? at : null);
    if (same && same === at) at = at.nextSibling;
    else now.insertBefore(same ?? child, at);
    if (same) morph(same, child, redraw);
    else if (child.nodeType === Node.ELEMENT_NODE) charts(child).forEach(redraw);
  }
  while (at) {
    const gone = at;
    at = at.nextSibling;
    gone.remove();
  }
}

const isAlike = (now, wanted) => now.nodeName === wanted.nodeName && !now.id && !wanted.id;

const charts = (root) => (root.matches('[data-chart]') ? [root] : [...root.querySelectorAll('[data-chart]')]);

// The fold that an element is in counts too, so that the words on it and those within tell of the
// same time.
function isFilledIn(element) {
  if (!element.matches('form, details')) return false;
  const fields = [...element.querySelectorAll('input, textarea, select')];
  return (fields.length > 0 && element.contains(document.activeElement)) || fields.some(isChanged);
}

function isChanged(field) {
  if (field.type === 'hidden') return false;
  if (field.type === 'checkbox' || field.type === 'radio') return field.checked !== field.defaultChecked;
  if (field.options) return isChosenAnew(field.options);
  return field.value !== field.defaultValue;
}

// Where no option is marked as chosen, a list begins with its first.
function isChosenAnew(options) {
  const all = [...options];
  const first = all.find((option) => option.defaultSelected) ?? all[0];
  return first !== undefined && !first.selected;
}
