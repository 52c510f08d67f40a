// Lets this browser in with the key, which comes from the link or is typed.
import {enter} from './api.js';
import {byId, setText} from './dom.js';

async function tryKey(key) {
  try {
    await enter(key);
    location.replace('/');
  } catch (refusal) {
    setText(byId('told'), `▲ ${refusal.message}`);
  }
}

/**
 * Tries the link's key. The key leaves the address, so that neither history nor a look at the
 * screen gives it away.
 */
function tryLink() {
  const key = decodeURIComponent(location.hash.slice(1));
  if (!key) return;
  history.replaceState(null, '', location.pathname);
  tryKey(key);
}

byId('form').addEventListener('submit', (event) => {
  event.preventDefault();
  tryKey(byId('key').value);
});
// Until this script listens, the browser by itself would put the key into the address.
byId('fields').disabled = false;
window.addEventListener('hashchange', tryLink);
tryLink();
