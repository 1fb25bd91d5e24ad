// @ts-check

// Prices of the stores as a table, out and in.

import { createTableFile } from '../../dom/table-file.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */

/** @param {Session} session */
export const createPrices = (session) =>
  createTableFile(
    {
      title: text.prices,
      help: text.pricesHelp,
      read: text.readPrices,
      write: text.savePrices,
      takeIn: text.takeIn,
      name: text.pricesName,
    },
    {
      read: (bytes) => {
        const view = session.ask((seam) => seam.readPrices(bytes));
        if (!view) return undefined;
        const sound = view.problems.length === 0;
        return { summary: view.summary, sentences: sound ? view.changes : view.problems, sound, ready: view.ready > 0 };
      },
      takeIn: () => session.send({ do: 'take-prices' }),
      write: () => session.ask((seam) => seam.writePrices()) ?? '',
    },
  );
