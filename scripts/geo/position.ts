/** A place in decimal degrees, WGS 84: `lat` -90 to 90, north positive; `lon` -180 to 180, east positive. */
export interface Position {
  lat: number;
  lon: number;
}

/**
 * The same position, when it is one on the Earth.
 *
 * @throws {RangeError} when a coordinate is outside its range or not a number
 */
export function checkedPosition(position: Position): Position {
  const { lat, lon } = position;
  if (!(lat >= -90 && lat <= 90)) throw new RangeError(`lat must be -90 to 90, found ${lat}`);
  if (!(lon >= -180 && lon <= 180)) throw new RangeError(`lon must be -180 to 180, found ${lon}`);
  return position;
}
