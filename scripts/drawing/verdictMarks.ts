/**
 * The marks of tables as symbols for one page: the arrows of the slope air, ids arrow-falling, arrow-turning and
 * arrow-rising, and the four verdicts, ids mark-suits, mark-marginal, mark-avoid, mark-not-assessed: a solid
 * square, a square half solid, a bare cross, a short dash. Four outlines that no theme or copier makes alike.
 */
export const VERDICT_MARKS =
  `<svg xmlns="http://www.w3.org/2000/svg" class="marks" width="0" height="0" aria-hidden="true" focusable="false">` +
  `<symbol id="mark-suits" viewBox="0 0 12 12"><rect class="draw-ink" x="1" y="1" width="10" height="10" fill="#000"/></symbol>` +
  `<symbol id="mark-marginal" viewBox="0 0 12 12"><path class="draw-ink" d="M1 1L11 11H1z" fill="#000"/>` +
  `<rect class="draw-line" x="1.6" y="1.6" width="8.8" height="8.8" fill="none" stroke="#000" stroke-width="1.2"/></symbol>` +
  `<symbol id="mark-avoid" viewBox="0 0 12 12"><path class="draw-line" d="M2.2 2.2L9.8 9.8M9.8 2.2L2.2 9.8" fill="none" stroke="#000" stroke-width="1.6"/></symbol>` +
  `<symbol id="mark-not-assessed" viewBox="0 0 12 12"><path class="draw-line" d="M4 6H8" fill="none" stroke="#000" stroke-width="1.4"/></symbol>` +
  arrow("falling", "M1.5 2L10 10.5M10.5 4.5V11H4") +
  arrow("turning", "M1 6H11M3.8 3.2L1 6L3.8 8.8M8.2 3.2L11 6L8.2 8.8") +
  arrow("rising", "M1.5 10L10 1.5M4 1H10.5V7.5") +
  `</svg>`;

function arrow(phase: string, d: string): string {
  return `<symbol id="arrow-${phase}" viewBox="0 0 12 12"><path class="draw-line" d="${d}" fill="none" stroke="#000" stroke-width="1.4"/></symbol>`;
}
