// @ts-check

// The fixed texts of a shared formula, in English.

export const words = Object.freeze({
  batch: 'Batch to make',
  unit: 'Weigh in',
  mark: 'Decimal mark',
  marks: { point: '1.5', comma: '1,5' },
  units: { g: 'grams', oz: 'ounces', kg: 'kilograms', lb: 'pounds' },
  material: 'Material',
  percent: '%',
  total: 'Total',
  method: 'Method',
  notes: 'Notes of the maker',
  inside: 'What is really in the jar',
  inci: 'Constituent',
  own: 'Made by the maker',
  cautions: 'Before you make it',
  caution: [
    'Patch test first. Keep it away from eyes and out of the reach of children. Goggles and gloves for caustics; they go into the water, never the other way round.',
    'A preservative range is no proof: a product for others needs a challenge test by a laboratory and the safety assessment the law asks for. No medical claims; local rules decide.',
    'The formula is its maker’s own. Stillroom does the arithmetic and has not tested it.',
  ],
  print: 'Print',
  cannotPrint: 'The page around this formula does not let it open a page to print. Open the formula at your bench and print it there.',
  cannotPrintHere: 'Printing was not let through here. Print this page from your browser’s own menu.',
  open: 'Open at my bench',
  fetching: 'Fetching the weigh sheet…',
  failed: 'The weigh sheet could not be fetched. Try again with a network, or open the formula itself:',
  noFormula: 'No formula is named here.',
});
