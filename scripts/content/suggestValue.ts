import { COMPASS_POINTS, type CompassPoint, pointBearingDeg } from "../geo/compassPoints.ts";
import { nearestWord } from "./nearestWord.ts";
import type { FieldRule } from "./schemaAt.ts";
import { slug } from "./slug.ts";

/**
 * What the author most likely meant in a field, as it would stand in the file, or null when that would be a guess about
 * a fact. A compass word becomes its bearing, a number in quotes a number, a word the nearest one allowed.
 *
 * @param name name of the field, "aspectDeg"
 * @example suggestValue("aspectDeg", "NE", rule) // 45
 */
export function suggestValue(name: string, value: unknown, rule: FieldRule): string | number | null {
  if (rule.choices.length > 0) return typeof value === "string" ? nearestWord(value, rule.choices) : null;
  if (rule.type === "number") return number(name, value, rule);
  if (typeof value !== "string") return null;
  const expected = rule.description ?? "";
  if (expected.startsWith("an id")) return slug(value);
  if (expected.startsWith("a clock time")) return clock(value);
  if (expected.startsWith("a lane letter") && /^[a-z]$/.test(value)) return value.toUpperCase();
  return null;
}

const POINT_WORDS: Readonly<Record<string, CompassPoint>> = {
  NORTH: "N",
  NORTHEAST: "NE",
  EAST: "E",
  SOUTHEAST: "SE",
  SOUTH: "S",
  SOUTHWEST: "SW",
  WEST: "W",
  NORTHWEST: "NW",
};

function number(name: string, value: unknown, rule: FieldRule): number | null {
  const isBearing = /degrees clockwise/.test(rule.description ?? "");
  if (typeof value === "number") return isBearing && Number.isFinite(value) ? turned(value) : null;
  if (typeof value !== "string") return null;
  const written = value.trim();
  if (isBearing) {
    const letters = written.toUpperCase().replace(/[\s-]/g, "");
    const point = POINT_WORDS[letters] ?? COMPASS_POINTS.find((known) => known === letters);
    if (point) return pointBearingDeg(point);
  }
  const figure = /^(-?\d+(?:[.,]\d+)?)\s*(°|deg|degrees|%|[a-z]{1,4})?$/i.exec(written);
  if (!figure) return null;
  const unit = figure[2]?.toLowerCase();
  if (unit !== undefined && !unitOfName(name).includes(unit)) return null;
  const plain = Number(figure[1]!.replace(",", "."));
  return isBearing ? turned(plain) : plain;
}

function turned(bearingDeg: number): number {
  return ((bearingDeg % 360) + 360) % 360;
}

/** Units an author may have written behind a number whose name already says it. */
function unitOfName(name: string): string[] {
  if (name.endsWith("Deg") || name === "lat" || name === "lon") return ["°", "deg", "degrees"];
  if (name.endsWith("Mm")) return ["mm"];
  if (name.endsWith("Min")) return ["min"];
  if (name.endsWith("Kg")) return ["kg"];
  if (name.endsWith("M")) return ["m"];
  return [];
}

function clock(value: string): string | null {
  const parts = /^(\d{1,2})[:.h](\d{2})(?::00)?\s*(am|pm)?$/i.exec(value.trim());
  if (!parts) return null;
  const half = parts[3]?.toLowerCase();
  const written = Number(parts[1]);
  if (Number(parts[2]) > 59 || written > 23 || (half && (written < 1 || written > 12))) return null;
  const hour = half === undefined ? written : (written % 12) + (half === "pm" ? 12 : 0);
  return `${String(hour).padStart(2, "0")}:${parts[2]}`;
}
