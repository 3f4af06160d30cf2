import type { Position } from "../../scripts/geo/position.ts";
import type { UtmZone } from "../../scripts/geo/utm.ts";

export interface PublishedGridPlace {
  place: string;
  position: Position;
  zone: UtmZone;
  eastingM: number;
  northingM: number;
  toleranceM: number;
  grid: string;
  convergenceDeg: number;
  convergenceToleranceDeg: number;
  scale: number;
  /** WMM2025 at sea level on 1 November 2026, null where the table has none. */
  declinationDeg: number | null;
}

/**
 * UTM, grid reference, convergence and point scale. "GeoConvert sample": GeographicLib manual page of GeoConvert. The others computed with GeographicLib's
 * GeoConvert 2.1.2. Tolerances: 0.01 m and 1e-6 degrees (half the last digit given), scale 1e-7. Declination: the
 * `geomagnetism` package's WMM2025, an implementation other than ours, to 0.02 degrees.
 */
export const PUBLISHED_GRID_PLACES: readonly PublishedGridPlace[] = [
  {
    ...at(
      "GeoConvert sample",
      33.3,
      44.4,
      "38N",
      444141,
      3684706,
      "38S MB 44140 84706",
      -0.32942,
      0.9996385,
      null,
    ),
    toleranceM: 0.6,
    convergenceToleranceDeg: 1e-5,
  },
  at(
    "Cross Mountain TN",
    36.19833,
    -84.23083,
    "16N",
    748981.86,
    4009501.53,
    "16S GF 48981 09501",
    1.636263,
    1.00036389,
    -5.98,
  ),
  at(
    "Denver",
    39.7392,
    -104.9903,
    "13N",
    500831.13,
    4398811.67,
    "13S ED 00831 98811",
    0.006201,
    0.99960001,
    7.49,
  ),
  at(
    "Inverness",
    57.4778,
    -4.2247,
    "30N",
    426560.49,
    6371236.27,
    "30V VJ 26560 71236",
    -1.032692,
    0.99966613,
    -0.93,
  ),
  at(
    "Maunga Whau",
    -36.877,
    174.764,
    "60S",
    300715.23,
    5916438.05,
    "60H UE 00715 16438",
    1.342263,
    1.00008928,
    20.36,
  ),
  at(
    "Queenstown",
    -45.0312,
    168.6626,
    "59S",
    315877.12,
    5010925.81,
    "59G LL 15877 10925",
    1.654154,
    1.00001687,
    25.27,
  ),
  at(
    "Tromsø",
    69.6492,
    18.9553,
    "34N",
    420653.59,
    7728081.22,
    "34W DC 20653 28081",
    -1.91717,
    0.99967702,
    11.28,
  ),
  at(
    "Longyearbyen",
    78.2232,
    15.6267,
    "33N",
    514278.72,
    8683355.47,
    "33X WG 14278 83355",
    0.613509,
    0.99960249,
    null,
  ),
  at(
    "Bergen",
    60.3913,
    5.3221,
    "32N",
    297353.93,
    6700648.35,
    "32V KN 97353 00648",
    -3.198717,
    1.00010324,
    null,
  ),
  at(
    "Windhoek",
    -22.5609,
    17.0658,
    "33S",
    712417.61,
    7503617.51,
    "33K YR 12417 03617",
    -0.792874,
    1.00015749,
    -12.66,
  ),
  at(
    "Honolulu",
    21.3069,
    -157.8583,
    "4N",
    618417.09,
    2356542.46,
    "4Q FJ 18417 56542",
    0.414901,
    0.99977328,
    9.27,
  ),
  at(
    "Kiritimati",
    1.8721,
    -157.4278,
    "4N",
    674875.79,
    207002.44,
    "4N FH 74875 07002",
    0.051375,
    0.99997858,
    null,
  ),
  at(
    "Ushuaia",
    -54.8019,
    -68.303,
    "19S",
    544805.1,
    3927029.88,
    "19F EV 44805 27029",
    -0.569573,
    0.99962462,
    11.63,
  ),
];

function at(
  place: string,
  lat: number,
  lon: number,
  zoneText: string,
  eastingM: number,
  northingM: number,
  grid: string,
  convergenceDeg: number,
  scale: number,
  declinationDeg: number | null,
): PublishedGridPlace {
  const zone: UtmZone = {
    number: Number.parseInt(zoneText, 10),
    hemisphere: zoneText.endsWith("N") ? "N" : "S",
  };
  return {
    place,
    position: { lat, lon },
    zone,
    eastingM,
    northingM,
    toleranceM: 0.01,
    grid,
    convergenceDeg,
    convergenceToleranceDeg: 1e-6,
    scale,
    declinationDeg,
  };
}
