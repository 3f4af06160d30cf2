/**
 * Rise, noon and set published as instants (UTC). SPA-14: Reda and Andreas 2003 (rev. 2008), NREL/TP-560-34302, table
 * A5.1 and its sunset, which belongs to the local evening before. NREL-1 to NREL-4: NREL SPA web calculator, as quoted
 * in the pvlib-python test suite; the sunset of NREL-2 too belongs to the local evening before, so that the local day's
 * own sunset is left out there. NOAA-1: NOAA solar calculator, from memory, whole minutes but for the noon.
 * Tolerances: 6 s, what the low-precision positions reach against the almanac below latitude 60; NOAA 60 s as its minutes.
 */
export const PUBLISHED_SUN_INSTANTS = [
  spa("SPA-14", "2003-10-17", "sunrise", "2003-10-17T13:12:43Z"),
  spa("SPA-14", "2003-10-17", "solarNoon", "2003-10-17T18:46:05Z"),
  spa("SPA-14", "2003-10-16", "sunset", "2003-10-17T00:20:19Z"),
  spa("NREL-1", "2015-01-02", "sunrise", "2015-01-02T14:21:55Z"),
  spa("NREL-1", "2015-01-02", "solarNoon", "2015-01-02T19:04:45Z"),
  spa("NREL-1", "2015-01-02", "sunset", "2015-01-02T23:47:43Z"),
  spa("NREL-2", "2015-08-02", "sunrise", "2015-08-02T12:00:27Z"),
  spa("NREL-2", "2015-08-02", "solarNoon", "2015-08-02T19:06:58Z"),
  spa("NREL-2", "2015-08-01", "sunset", "2015-08-02T02:13:58Z"),
  utc("NREL-3", "1996-07-05", "sunrise", "1996-07-05T07:08:15Z"),
  utc("NREL-3", "1996-07-05", "solarNoon", "1996-07-05T12:04:36Z"),
  utc("NREL-3", "1996-07-05", "sunset", "1996-07-05T17:01:04Z"),
  utc("NREL-4", "2004-12-04", "sunrise", "2004-12-04T04:38:57Z"),
  utc("NREL-4", "2004-12-04", "solarNoon", "2004-12-04T11:50:22Z"),
  utc("NREL-4", "2004-12-04", "sunset", "2004-12-04T19:02:03Z"),
  { ...spa("NOAA-1", "2010-06-21", "sunrise", "2010-06-21T11:31:00Z"), lat: 40, lon: -105, toleranceS: 60 },
  { ...spa("NOAA-1", "2010-06-21", "solarNoon", "2010-06-21T19:01:45Z"), lat: 40, lon: -105 },
  { ...spa("NOAA-1", "2010-06-21", "sunset", "2010-06-22T02:32:00Z"), lat: 40, lon: -105, toleranceS: 60 },
];

type Field = "sunrise" | "solarNoon" | "sunset";

/** Golden, Colorado, on standard time all year, as the sources give it. */
function spa(id: string, localDate: string, field: Field, at: string) {
  return { id, lat: 39.742476, lon: -105.1786, timezone: "Etc/GMT+7", localDate, field, at, toleranceS: 6 };
}

function utc(id: string, localDate: string, field: Field, at: string) {
  return { id, lat: -35, lon: 0, timezone: "UTC", localDate, field, at, toleranceS: 6 };
}
