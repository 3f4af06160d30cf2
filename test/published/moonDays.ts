import type { MoonPhase } from "../../scripts/light/moonDay.ts";

interface PublishedMoonDay {
  id: string;
  place: string;
  lat: number;
  lon: number;
  timezone: string;
  localDate: string;
  rise: string | null;
  set: string | null;
  /** The instant the lit share belongs to. */
  at: string;
  illuminated: number;
  phaseName: MoonPhase;
}

/**
 * Computed with astronomy-engine 2.1.19 and again with python3-ephem 4.1.4, which agrees within 0.4 s. Phase name: the
 * eighth of the cycle that the row's elongation from the sun falls in (187.74, 268.93, 181.23, ... degrees).
 */
export const PUBLISHED_MOON_DAYS: readonly PublishedMoonDay[] = [
  moon(
    "M01",
    "Denver",
    39.7392,
    -104.9903,
    "America/Denver",
    "2026-10-26",
    "18:08:13",
    "08:04:14",
    "2026-10-26T18:00Z",
    0.9937,
    "full moon",
  ),
  moon(
    "M02",
    "Denver",
    39.7392,
    -104.9903,
    "America/Denver",
    "2026-11-01",
    "23:26:31",
    "13:11:18",
    "2026-11-01T18:30Z",
    0.5106,
    "last quarter",
  ),
  moon(
    "M03",
    "Cross Mountain",
    36.19833,
    -84.23083,
    "America/New_York",
    "2026-11-24",
    "17:14:28",
    "07:32:55",
    "2026-11-24T17:00Z",
    0.998,
    "full moon",
  ),
  moon(
    "M04",
    "Inverness",
    57.4778,
    -4.2247,
    "Europe/London",
    "2026-10-25",
    "15:59:08",
    "06:22:07",
    "2026-10-25T11:30Z",
    0.9923,
    "full moon",
  ),
  moon(
    "M05",
    "Queenstown",
    -45.0312,
    168.6626,
    "Pacific/Auckland",
    "2026-04-05",
    "19:23:15",
    "10:19:07",
    "2026-04-04T23:30Z",
    0.9194,
    "waning gibbous",
  ),
  moon(
    "M06",
    "Auckland",
    -36.877,
    174.764,
    "Pacific/Auckland",
    "2026-01-15",
    "02:33:59",
    "18:04:48",
    "2026-01-14T23:00Z",
    0.1376,
    "waning crescent",
  ),
  moon(
    "M07",
    "Windhoek",
    -22.5609,
    17.0658,
    "Africa/Windhoek",
    "2026-07-01",
    "19:39:36",
    "08:41:27",
    "2026-07-01T10:00Z",
    0.981,
    "full moon",
  ),
  moon(
    "M08",
    "Anchorage",
    61.2181,
    -149.9003,
    "America/Anchorage",
    "2026-08-20",
    "19:02:28",
    "21:55:12",
    "2026-08-20T20:00Z",
    0.5698,
    "first quarter",
  ),
  moon(
    "M09",
    "Honolulu",
    21.3069,
    -157.8583,
    "Pacific/Honolulu",
    "2026-10-10",
    "06:30:47",
    "18:13:29",
    "2026-10-10T22:00Z",
    0.002,
    "new moon",
  ),
  moon(
    "M10",
    "Helsinki",
    60.1699,
    24.9384,
    "Europe/Helsinki",
    "2026-06-21",
    "12:53:54",
    "01:00:21",
    "2026-06-21T09:00Z",
    0.4453,
    "first quarter",
  ),
  moon(
    "M11",
    "Tromsø",
    69.6492,
    18.9553,
    "Europe/Oslo",
    "2026-12-21",
    null,
    null,
    "2026-12-21T11:00Z",
    0.9001,
    "waxing gibbous",
  ),
];

function moon(
  id: string,
  place: string,
  lat: number,
  lon: number,
  timezone: string,
  localDate: string,
  rise: string | null,
  set: string | null,
  at: string,
  illuminated: number,
  phaseName: MoonPhase,
): PublishedMoonDay {
  return { id, place, lat, lon, timezone, localDate, rise, set, at, illuminated, phaseName };
}
