import * as Astronomy from "astronomy-engine";
import type { Position } from "../../scripts/geo/position.ts";

// An almanac independent of the library that the packs use (VSOP87 and ELP theories, true radii and parallax).

const DAY_MS = 24 * 3_600_000;

/** Every passage of the sun's centre through an airless angle, up or down, with start <= at < end. */
export function almanacSunPassages(
  position: Position,
  sunDeg: number,
  climbs: boolean,
  start: Date,
  end: Date,
): Date[] {
  const place = observer(position);
  const direction = climbs ? 1 : -1;
  return every(start, end, (from, days) =>
    Astronomy.SearchAltitude(Astronomy.Body.Sun, place, direction, from, days, sunDeg),
  );
}

/** Every rise (or set) of the upper edge of sun or moon, 34' refraction, true radius, with start <= at < end. */
export function almanacRises(
  body: "sun" | "moon",
  position: Position,
  climbs: boolean,
  start: Date,
  end: Date,
): Date[] {
  const place = observer(position);
  const which = body === "sun" ? Astronomy.Body.Sun : Astronomy.Body.Moon;
  return every(start, end, (from, days) =>
    Astronomy.SearchRiseSet(which, place, climbs ? 1 : -1, from, days),
  );
}

/** The sun's noons with start <= at < end. */
export function almanacNoons(position: Position, start: Date, end: Date): Date[] {
  const place = observer(position);
  return every(start, end, (from) => Astronomy.SearchHourAngle(Astronomy.Body.Sun, place, 0, from, 1).time);
}

/** Airless altitude and azimuth of the sun's centre, topocentric. */
export function almanacSun(at: Date, position: Position): { airlessDeg: number; azimuthDeg: number } {
  const place = observer(position);
  const equator = Astronomy.Equator(Astronomy.Body.Sun, at, place, true, true);
  const horizon = Astronomy.Horizon(at, place, equator.ra, equator.dec);
  return { airlessDeg: horizon.altitude, azimuthDeg: horizon.azimuth };
}

/** Lit share of the moon's disc, 0 to 1, and its longitude ahead of the sun, 0 to 360 degrees. */
export function almanacMoon(at: Date): { illuminated: number; elongationDeg: number } {
  return {
    illuminated: Astronomy.Illumination(Astronomy.Body.Moon, at).phase_fraction,
    elongationDeg: Astronomy.MoonPhase(at),
  };
}

function observer({ lat, lon }: Position): Astronomy.Observer {
  return new Astronomy.Observer(lat, lon, 0);
}

function every(
  start: Date,
  end: Date,
  next: (from: Date, days: number) => Astronomy.AstroTime | null,
): Date[] {
  const found: Date[] = [];
  for (let from = start; from < end; ) {
    const at = next(from, (end.getTime() - from.getTime()) / DAY_MS)?.date;
    if (!at || at >= end) break;
    found.push(at);
    from = new Date(at.getTime() + 60_000);
  }
  return found;
}
