/** Denominators of the scales a map is drawn at; 1:5 000 is for sketches of a site. */
export type MapScale = 5000 | 10000 | 15000 | 25000;

/** Scales of a whole map sheet, the most detail first. A sketch scale is asked for by name, never chosen. */
export const SHEET_SCALES: readonly MapScale[] = [10000, 15000, 25000];

/** Room for the map inside the margins of one printed page, millimetres, upright. */
export interface MapWindow {
  widthMm: number;
  heightMm: number;
}

export const A4_WINDOW: MapWindow = { widthMm: 180, heightMm: 215 };
export const A5_WINDOW: MapWindow = { widthMm: 126, heightMm: 155 };

/**
 * Grid metres that a length on paper stands for. On the ground it is up to 0.04 % more in the middle of a UTM zone and up
 * to 0.1 % less at its edge: less than a printer's own error.
 *
 * @example groundM(100, 15000) // 1500
 */
export function groundM(paperMm: number, scale: MapScale): number {
  return (paperMm * scale) / 1000;
}

/**
 * Length on paper of grid metres, millimetres.
 *
 * @example paperMm(1500, 15000) // 100
 */
export function paperMm(gridM: number, scale: MapScale): number {
  return (gridM * 1000) / scale;
}
