// What every page of the workbench does: draws its charts, sends its forms, and keeps itself fresh.
import {drawCharts} from './charts.js';
import {watchForms} from './forms.js';
import {keepFresh} from './fresh.js';
import {watchSheet} from './importing.js';
import {sayWhatWasDone} from './done.js';
import {watchUnits} from './units.js';

for (const button of document.querySelectorAll('[data-print]')) button.addEventListener('click', () => window.print());

watchUnits();
drawCharts(document);
watchForms();
watchSheet();
keepFresh();
sayWhatWasDone();
