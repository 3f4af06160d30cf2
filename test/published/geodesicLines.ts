import type { Position } from "../../scripts/geo/position.ts";

export interface PublishedLine {
  id: string;
  from: Position;
  to: Position;
  distanceM: number;
  bearingDeg: number;
  /** Direction of travel on arrival, as the source gives it. */
  arrivingDeg: number;
  toleranceM: number;
  toleranceDeg: number;
}

/**
 * WGS 84 geodesic lines. The first four: Karney 2013, J. Geodesy 87:43, checks shipped with GeographicLib (geodtest.cpp
 * and the sample of its GeodSolve manual page). The others: computed with GeographicLib's GeodSolve 2.1.2.
 * Tolerances: half the last digit given, 1 mm and 1e-7 degrees at the least.
 */
export const PUBLISHED_LINES: readonly PublishedLine[] = [
  line("GEO-1", [40.6, -73.8], [49.01666667, 2.55], 5853226, 53.47022, 111.59367, 0.5, 1e-5),
  line("GEO-2", [35.60777, -139.44815], [-11.17491, -69.95921], 8935244.56048183, 111.09874843, 129.28927089),
  line(
    "GEO-3",
    [-21.97856, 142.59065],
    [41.84138, 98.56635],
    8394328.894657671,
    -32.444568764,
    -41.843599514,
  ),
  line("GEO-4", [-41.22777, 122.32875], [-7.57291, 130.37946], 3812686.035106021, 14.285113402, 10.805303085),
  line(
    "GEO-5",
    [-19.79938, -174.47484],
    [-11.99349, -154.35109],
    2319004.860116939,
    71.16727578,
    65.589099775,
  ),
  line("GEO-6", [0, 0], [0, 1], 111319.4908, 90, 90),
  line("GEO-7", [0, 0], [1, 0], 110574.3886, 0, 0),
  line("GEO-8", [36.19833, -84.23083], [36.3346, -84.1623], 16326.9127, 22.13839265, 22.17893101),
  line("GEO-9", [-36.877, 174.764], [-36.8785, 174.7653], 202.8369, 145.15276, 145.15198, 1e-3, 1e-5),
  line("GEO-10", [0, 0], [0.5, 179.5], 19936288.579, 25.67187, 154.32709, 1e-3, 1e-5),
];

function line(
  id: string,
  [fromLat, fromLon]: [number, number],
  [toLat, toLon]: [number, number],
  distanceM: number,
  bearingDeg: number,
  arrivingDeg: number,
  toleranceM = 1e-3,
  toleranceDeg = 1e-7,
): PublishedLine {
  const from = { lat: fromLat, lon: fromLon };
  const to = { lat: toLat, lon: toLon };
  return { id, from, to, distanceM, bearingDeg, arrivingDeg, toleranceM, toleranceDeg };
}
