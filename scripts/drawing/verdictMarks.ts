/**
 * The four verdict marks as symbols for one page, ids mark-suits, mark-marginal, mark-avoid, mark-not-assessed: a solid
 * square, a square half solid, a bare cross, a short dash. Four outlines that no theme or copier makes alike.
 */
export const VERDICT_MARKS =
  `<svg xmlns="http://www.w3.org/2000/svg" class="marks" width="0" height="0" aria-hidden="true" focusable="false">` +
  `<symbol id="mark-suits" viewBox="0 0 12 12"><rect class="draw-ink" x="1" y="1" width="10" height="10" fill="#000"/></symbol>` +
  `<symbol id="mark-marginal" viewBox="0 0 12 12"><path class="draw-ink" d="M1 1L11 11H1z" fill="#000"/>` +
  `<rect class="draw-line" x="1.6" y="1.6" width="8.8" height="8.8" fill="none" stroke="#000" stroke-width="1.2"/></symbol>` +
  `<symbol id="mark-avoid" viewBox="0 0 12 12"><path class="draw-line" d="M1.5 1.5L10.5 10.5M10.5 1.5L1.5 10.5" fill="none" stroke="#000" stroke-width="1.6"/></symbol>` +
  `<symbol id="mark-not-assessed" viewBox="0 0 12 12"><path class="draw-line" d="M4 6H8" fill="none" stroke="#000" stroke-width="1.4"/></symbol>` +
  `</svg>`;
