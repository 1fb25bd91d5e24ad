// @ts-check

// Tables of the maker’s own materials, read and written.

import { createTableFile } from '../../dom/table-file.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */

/** @param {Session} session */
export const createTables = (session) =>
  createTableFile(
    {
      title: text.table,
      help: text.tableHelp,
      read: text.readTable,
      write: text.writeTable,
      takeIn: text.takeIn,
      name: text.tableName,
    },
    {
      read: (bytes) => {
        const view = session.readTable(bytes);
        const ready = view !== undefined && view.ready > 0;
        return view && { summary: view.summary, sentences: view.problems, sound: ready, ready };
      },
      takeIn: () => session.send({ do: 'import-table' }),
      write: () => session.writeTable(),
    },
    'tables',
  );
