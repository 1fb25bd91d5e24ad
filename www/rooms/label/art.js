// @ts-check

// The label drawn in millimetres, and the sheets it is printed on. What stands where comes from the session; nothing is
// reckoned here.

import { draw, make } from '../../dom/element.js';

/** @typedef {import('../../seam/stillroom.js').LabelArtView} LabelArtView */
/** @typedef {import('../../seam/stillroom.js').LabelSheetView} LabelSheetView */

/**
 * A label, as large as it is.
 * @param {LabelArtView} art
 */
export function drawLabel(art) {
  return draw(
    'svg',
    {
      class: 'label-art',
      'data-shape': art.shape,
      viewBox: `0 0 ${art.width} ${art.height}`,
      width: `${art.width}mm`,
      height: `${art.height}mm`,
      role: 'img',
      'aria-label': art.description,
    },
    ...parts(art),
  );
}

/** @param {LabelArtView} art */
function parts(art) {
  const { width, height, openJar, code } = art;
  const edge =
    art.shape === 'round'
      ? draw('ellipse', { class: 'label-edge', cx: '50%', cy: '50%', rx: '50%', ry: '50%' })
      : draw('rect', { class: 'label-edge', width, height });
  const letters = art.runs.map((run) => {
    // Letters of another typeface are drawn out or in to the width that was reckoned with.
    const text = draw('text', {
      x: run.x,
      y: run.y,
      'font-size': run.size,
      'font-weight': run.bold ? 700 : 400,
      textLength: run.width,
      lengthAdjust: 'spacingAndGlyphs',
    });
    text.textContent = run.text;
    return text;
  });
  const jar = openJar
    ? [
        draw(
          'svg',
          { x: openJar.x, y: openJar.y, width: openJar.side, height: openJar.side, viewBox: '0 0 34 34' },
          draw('path', { class: 'label-jar', d: 'M4 14v15q0 3 3 3h20q3 0 3-3V14M3 11h28v3H3z' }),
          draw('path', { class: 'label-jar', d: 'M5 7 28 2l1 4L6 11z' }),
        ),
      ]
    : [];
  const square = code
    ? [
        draw(
          'svg',
          {
            x: code.x,
            y: code.y,
            width: code.side,
            height: code.side,
            viewBox: `0 0 ${code.modules} ${code.modules}`,
            'shape-rendering': 'crispEdges',
          },
          draw('path', { class: 'label-code', d: code.path }),
        ),
      ]
    : [];
  return [edge, ...letters, ...jar, ...square];
}

/**
 * Every sheet, as large as its paper.
 * @param {LabelArtView} art
 * @param {LabelSheetView} sheet
 */
export function drawSheets(art, sheet) {
  return Array.from({ length: sheet.sheets }, (_, number) => {
    const isLast = number === sheet.sheets - 1;
    const places = isLast ? sheet.places.slice(0, sheet.onLast) : sheet.places;
    const page = draw(
      'svg',
      {
        viewBox: `0 0 ${sheet.width} ${sheet.height}`,
        width: `${sheet.width}mm`,
        height: `${sheet.height}mm`,
      },
      ...places.map(([x, y]) => draw('svg', { x, y, width: art.width, height: art.height }, ...parts(art))),
    );
    return make('div', { class: 'label-sheet', 'data-paper': sheet.paper }, page);
  });
}
