import { distanceAndBearing } from "../../geo/geodesic.ts";
import type { Position } from "../../geo/position.ts";
import type { AreaDraft } from "../areaDraft.ts";
import type { Loose } from "../loose.ts";
import type { Problem } from "../problem.ts";
import { wholePosition } from "./wholePosition.ts";

const FAR_M = 100_000;

interface Place {
  file: string;
  field: string;
  position: Position;
}

/** Places that lie too far from the centre to belong to the area, and those with latitude and longitude exchanged. */
export function checkDistances(draft: AreaDraft): Problem[] {
  const centre = wholePosition(draft.area.loose?.centre);
  if (centre === null) return [];
  return placesOf(draft).flatMap(({ file, field, position }) => {
    const distanceM = distanceAndBearing(centre, position).distanceM;
    if (distanceM <= FAR_M) return [];
    const found = `${position.lat}, ${position.lon}, ${Math.round(distanceM / 1000)} km from the centre of the area`;
    const expected = "a place within 100 km of the centre";
    const isSwapped =
      Math.abs(position.lon) <= 90 &&
      distanceAndBearing(centre, { lat: position.lon, lon: position.lat }).distanceM <= FAR_M;
    const fix = isSwapped
      ? `lat and lon look exchanged: write { "lat": ${position.lon}, "lon": ${position.lat} }`
      : "check the signs and digits of this position, and of the centre in area.json";
    return [
      { code: isSwapped ? "position-swapped" : "position-far", file, field, found, expected, fix } as const,
    ];
  });
}

function placesOf(draft: AreaDraft): Place[] {
  const places: Place[] = [];
  const add = (file: string, field: string, position: Loose<Position> | undefined): void => {
    const whole = wholePosition(position);
    if (whole) places.push({ file, field, position: whole });
  };
  const { file, loose } = draft.area;
  for (const kind of ["camps", "parkings"] as const) {
    for (const [i, place] of (loose?.[kind] ?? []).entries())
      add(file, `${kind}.${i}.position`, place?.position);
  }
  for (const [i, block] of (loose?.blocks ?? []).entries()) add(file, `blocks.${i}.centre`, block?.centre);
  add(file, "emergency.nearestRoadAccess", loose?.emergency?.nearestRoadAccess);
  for (const site of draft.sites) {
    add(site.file, "position", site.loose?.position);
    for (const [i, walkIn] of (site.loose?.walkIns ?? []).entries()) {
      const { along } = walkIn ?? {};
      if (!Array.isArray(along)) continue;
      for (const [j, point] of along.entries()) add(site.file, `walkIns.${i}.along.${j}`, point);
    }
  }
  for (const camera of draft.cameras) add(camera.file, "position", camera.loose?.position);
  return places;
}
