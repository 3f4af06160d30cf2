import type { SiteContent } from "../../content/areaContent.ts";
import type { SiteDetails } from "../../content/schema/detailsSchema.ts";
import type { PackSite } from "../../content/schema/packSchema.ts";
import { compassPoint } from "../../geo/compassPoints.ts";
import { decimalDegreesText, degreesMinutesText } from "../../geo/coordinateText.ts";
import { barredSpanText, bearingText, compassSentence } from "../words/bearingText.ts";
import { dateText } from "../words/dateText.ts";
import { aboutMinutesText } from "../words/durationText.ts";
import { countText, listWords, sentenceStart } from "../words/listWords.ts";
import {
  heightText,
  platformText,
  rangeText,
  trunkText,
  type Units,
  walkDistanceText,
} from "../words/measureText.ts";
import { inTenText } from "../words/shareWords.ts";
import { type AreaPack, type FactRow, fact } from "./sheetParts.ts";

/** Ground, place and outlook of a site as label and value pairs. */
export function groundFacts(area: AreaPack, site: PackSite, content: SiteContent): FactRow[] {
  const { units } = area.pack.area;
  const { facts } = content;
  const slope =
    site.slopeDeg === null
      ? `slope not known: ${site.why.slopeDeg ?? "no ground data"}`
      : `slope ${Math.round(site.slopeDeg)} degrees${site.aspectDeg === null ? "" : `, faces ${compassPoint(site.aspectDeg)} (${bearingText(site.aspectDeg)})`}`;
  const elevation = site.elevationM === null ? "elevation not known" : heightText(site.elevationM, units);
  const overlooks = facts.overlooksName ?? facts.overlooks;
  const rows = [
    fact("Overlooks", overlooks),
    fact("Ground", `${elevation}, ${slope}, ${facts.cover}`),
    fact(
      "Platform",
      `${platformText(facts.platformHeightM, units)} up${facts.facingDeg === null ? "" : `, facing ${bearingText(facts.facingDeg)}`}`,
    ),
  ];
  if (facts.rest !== undefined) {
    rows.push(fact("Rest", `${countText(facts.rest.afterSitDays, "day")} after a sit`));
  }
  rows.push(
    fact(
      "Last sat",
      site.lastSatOn === null
        ? (site.why.lastSatOn ?? "not known")
        : dateText(site.lastSatOn, area.pack.area.locale),
    ),
  );
  return rows;
}

/** Where the site is, two ways and as a grid, and how to set a compass there. */
export function placeFacts(site: PackSite): FactRow[] {
  return [
    fact("Degrees", decimalDegreesText(site.position)),
    fact("Minutes", degreesMinutesText(site.position)),
    fact("Grid", `${site.grid}, WGS 84`),
    fact(
      "Compass",
      site.declinationDeg === null
        ? `not known: ${site.why.declinationDeg ?? "no magnetic data"}`
        : compassSentence(site.declinationDeg),
    ),
  ];
}

/** The measured trunk and what it is at the platform. */
export function treeFacts(details: SiteDetails | undefined, content: SiteContent, units: Units): FactRow[] {
  const { tree } = content.facts;
  if (tree === undefined) return [fact("Tree", "not entered")];
  const measured = details?.tree ?? null;
  const rows = [fact("Tree", tree.species)];
  if (measured !== null) {
    const [low, high] = measured.diameterAtPlatformMm;
    const guessed = tree.guessed?.some((name) => name === "girthMm" || name === "diameterMm")
      ? ", guessed"
      : "";
    rows.push(
      fact(
        "Trunk",
        `${trunkText(measured.diameterAtMeasureMm, units)} through at ${platformText(tree.measuredAtHeightM, units)}${guessed}`,
      ),
      fact(
        "At platform",
        low === high ? trunkText(low, units) : `${trunkText(low, units)} to ${trunkText(high, units)}`,
      ),
    );
  }
  return rows;
}

/** Each way in as its name and what it asks of you. */
export function walkInFacts(area: AreaPack, site: PackSite, content: SiteContent): FactRow[] {
  const { units } = area.pack.area;
  const starts = [...area.content.facts.camps, ...area.content.facts.parkings];
  if (site.walkIns.length === 0) return [fact("Walk-in", "not entered")];
  return site.walkIns.map((walkIn) => {
    const facts = content.facts.walkIns.find((w) => w.id === walkIn.id);
    const start = starts.find((place) => place.id === facts?.from)?.name ?? "a start that is not named";
    const parts = [
      `from ${start}`,
      walkIn.lengthM === null
        ? `distance not known (${walkIn.why.lengthM ?? "no line"})`
        : walkDistanceText(walkIn.lengthM, units),
      walkIn.climbM === null ? [] : `${heightText(walkIn.climbM, units)} up`,
      walkIn.fallM === null ? [] : `${heightText(walkIn.fallM, units)} down`,
      walkIn.minutes === null
        ? `time not known (${walkIn.why.minutes ?? "no line"})`
        : `${aboutMinutesText(walkIn.minutes)}${walkIn.minutesSource === "owner" ? " by the owner" : ""}`,
      walkIn.crossings === null
        ? "water NOT CHECKED"
        : walkIn.crossings === 0
          ? "no stream crossed"
          : countText(walkIn.crossings, "stream crossing"),
    ];
    return fact(facts?.name ?? walkIn.id, parts.flat().join(", "));
  });
}

/**
 * Each shooting lane with what lies behind it, as far as the grid and the owner know. What holds for all lanes stands once:
 * that the ground behind was not worked out, and who saw which of them in daylight.
 */
export function laneFacts(area: AreaPack, site: PackSite, content: SiteContent): FactRow[] {
  const { units, locale } = area.pack.area;
  const { lanes } = content.facts;
  if (lanes.length === 0) return [fact("Lanes", "not entered")];
  const rows = lanes.map((lane) =>
    fact(
      `Lane ${lane.id}`,
      `${bearingText(lane.bearingDeg)}, ${Math.round(lane.widthDeg)} wide, to ${rangeText(lane.maxRangeM, units)}${site.linesOfFire === null ? "" : `; ground behind ${behindText(site, lane.id)}`}`,
    ),
  );
  if (site.linesOfFire === null) {
    rows.push(fact("Ground behind", `NOT CHECKED: ${site.why.linesOfFire ?? "no terrain"}`));
  }
  const seen = lanes.map((lane) => ({
    id: lane.id,
    by:
      lane.seenOnGround === null
        ? "not in daylight: NOT CHECKED"
        : `by ${lane.seenOnGround.by}, ${dateText(lane.seenOnGround.on, locale)}`,
  }));
  for (const by of new Set(seen.map((lane) => lane.by))) {
    rows.push(fact(`Seen ${listWords(seen.filter((lane) => lane.by === by).map(({ id }) => id))}`, by));
  }
  return rows;
}

/** Worst ground behind any bearing of a lane: none before far before earth. */
function behindText(site: PackSite, lane: string): string {
  const grounds = (site.linesOfFire ?? []).filter((line) => line.lane === lane).map((line) => line.ground);
  if (grounds.length === 0) return "NOT CHECKED";
  if (grounds.includes("none")) return "no backstop";
  return grounds.includes("far") ? "far ground only" : "earth close behind";
}

export interface NoShootRow {
  span: string;
  magnetic: string;
  reason: string;
}

/** Closed bearings rounded outward; null when they were not worked out. */
export function noShootRows(area: AreaPack, site: PackSite): NoShootRow[] | null {
  const { units } = area.pack.area;
  return (
    site.noShoot?.map((closed) => ({
      span: barredSpanText(closed.fromDeg, closed.toDeg),
      magnetic:
        closed.fromMagDeg === null || closed.toMagDeg === null
          ? "not known"
          : barredSpanText(closed.fromMagDeg, closed.toMagDeg),
      reason: `${closed.reason}${closed.distanceM === null ? "" : ` at ${rangeText(closed.distanceM, units)}`}`,
    })) ?? null
  );
}

/** One line for the top of the card: where not to shoot. */
export function noShootLine(area: AreaPack, site: PackSite): string {
  const rows = noShootRows(area, site);
  if (rows === null) return `No-shoot bearings NOT CHECKED: ${site.why.noShoot ?? "not worked out"}`;
  if (rows.length === 0) return "No closed bearing was found on the map. Look before every shot.";
  return `Do not shoot ${listWords(rows.map((row) => `${row.span} (${row.reason})`))}.`;
}

/** Where deer are expected from, by session. */
export function approachFacts(area: AreaPack, content: SiteContent, sessions: string[]): FactRow[] {
  const { units } = area.pack.area;
  return sessions.flatMap((session) => {
    const approaches = content.facts.approaches[session] ?? [];
    if (approaches.length === 0) return [fact(sentenceStart(session), "no approach entered: not assessed")];
    return approaches.map((approach) => {
      const along = area.content.map?.features.find((f) => f.properties.id === approach.along)?.properties;
      const [near, far] = approach.distanceM;
      const direction =
        approach.along !== undefined
          ? `along ${along?.name ?? along?.kind ?? "a line of the map"}`
          : approach.bearingsDeg === undefined
            ? "direction not entered"
            : `from ${bearingText(approach.bearingsDeg[0])} to ${bearingText(approach.bearingsDeg[1])}`;
      const name = approach.name === undefined ? "" : `${approach.name}, `;
      return fact(
        sentenceStart(session),
        `${name}${direction}, ${rangeText(near, units)} to ${rangeText(far, units)}, ${inTenText(approach.use)} deer`,
      );
    });
  });
}

export interface LocalNoteRow {
  cells: string;
  says: string;
  note: string;
  who: string;
}

/** What people saw here; it outranks the model for the cells it names. */
export function localNoteRows(area: AreaPack, content: SiteContent): LocalNoteRow[] {
  return content.facts.localNotes.map((note) => ({
    cells: [
      sentenceStart(note.session),
      note.phase === undefined ? [] : `${note.phase} air`,
      note.windFrom === undefined ? [] : note.windFrom === "calm" ? "calm" : `wind from ${note.windFrom}`,
      note.class === undefined ? [] : note.class,
    ]
      .flat()
      .join(", "),
    says:
      [note.verdict, note.turnsAt === undefined ? undefined : `air turns about ${note.turnsAt}`]
        .filter((part) => part !== undefined)
        .join(", ") || "no change",
    note: note.note,
    who: `${note.seenBy}, ${dateText(note.seenOn, area.pack.area.locale)}`,
  }));
}
