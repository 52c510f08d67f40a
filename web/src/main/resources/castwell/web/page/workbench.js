// What every page of the workbench does: draws its charts, sends its forms, and keeps itself fresh.
import {drawCharts} from './charts.js';
import {watchForms} from './forms.js';
import {keepFresh} from './fresh.js';
import {watchSheet} from './importing.js';
import {sayWhatWasDone} from './done.js';

const YEAR_S = 365 * 24 * 3600;

for (const button of document.querySelectorAll('[data-units]')) {
  button.addEventListener('click', () => {
    document.cookie = `castwell-units=${button.dataset.units}; Path=/; Max-Age=${YEAR_S}; SameSite=Strict`;
    location.reload();
  });
}

for (const button of document.querySelectorAll('[data-print]')) button.addEventListener('click', () => window.print());

drawCharts(document);
watchForms();
watchSheet();
keepFresh();
sayWhatWasDone();
