// @ts-check
import init, { version } from './seam/stillroom.js';
import { registerOffline } from './offline.js';

await init();
const place = document.querySelector('#version');
if (place) place.textContent = version();
registerOffline({});
