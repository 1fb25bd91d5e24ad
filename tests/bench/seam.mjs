// @ts-check

// What one crossing of the seam costs at the least: a short text from Rust to JavaScript.

import { loadSeam, measure } from './harness.mjs';

const seam = await loadSeam();

measure('seam.version', () => seam.version());
