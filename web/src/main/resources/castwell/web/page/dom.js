// A few helpers for making and changing elements. Text goes in as text, never as markup.

/** The element with this id. */
export const byId = (id) => document.getElementById(id);

/** Makes an HTML element: functions become listeners, true and false switch an attribute on or off. */
export function el(name, attributes = {}, ...children) {
  return fill(document.createElement(name), attributes, children);
}

/** Makes an SVG element in the same way. */
export function svg(name, attributes = {}, ...children) {
  return fill(document.createElementNS('http://www.w3.org/2000/svg', name), attributes, children);
}

function fill(element, attributes, children) {
  for (const [key, value] of Object.entries(attributes)) {
    if (typeof value === 'function') element.addEventListener(key, value);
    else if (typeof value === 'boolean') element.toggleAttribute(key, value);
    else element.setAttribute(key, value);
  }
  element.append(...children);
  return element;
}

/** Changes a text only when it differs, so that screen readers and selections are left in peace. */
export function setText(element, text) {
  if (element.textContent !== text) element.textContent = text;
}

/** Shows that a form is at work while `action` runs, and returns its answer. */
export async function whileBusy(form, action) {
  form.setAttribute('aria-busy', 'true');
  try {
    return await action();
  } finally {
    form.removeAttribute('aria-busy');
  }
}

/**
 * Makes `wanted` the parent's children. Only what has to move is moved, so that the focus stays
 * where it is.
 */
export function arrange(parent, wanted) {
  for (const child of [...parent.children]) {
    if (!wanted.includes(child)) child.remove();
  }
  wanted.forEach((child, i) => {
    if (parent.children[i] !== child) parent.insertBefore(child, parent.children[i] ?? null);
  });
}
