import type { ShootingTableRow } from "../content/areaContent.ts";
import type { ShootingLayer, ShootingLayers } from "../content/schema/shootingRuleSchema.ts";
import type { Position } from "../geo/position.ts";
import { civilAt } from "../time/civilTime.ts";
import { layerRules, type RuleInUse } from "./layerRules.ts";
import type { HuntFacts } from "./ruleMatch.ts";
import { aboutNotes, type RuleDay, type RuleHours, ruleWindows } from "./ruleWindows.ts";
import { type SunAnchorsOf, sunAnchors } from "./sunAnchors.ts";
import type { TimeWindow } from "./timeWindows.ts";

export interface ShootingLightRequest {
  layers: ShootingLayers;
  /** Official tables by the file name that a rule gives. */
  tables: Readonly<Record<string, readonly ShootingTableRow[]>>;
  localDate: string;
  timezone: string;
  /** The place that `reference: site` stands for: the site on its card, the centre in tables of the area. */
  sitePosition: Position;
  /** null = not known: rules made for one species, weapon or land then narrow the hours and can not confirm them. */
  species: string | null;
  method: string | null;
  land: string | null;
  /** Management unit, or several where the place lies within 200 m of the line between them. */
  zone?: string | readonly string[] | undefined;
  class?: string | undefined;
  /** Whether the date lies in a season that the area lists for this species. */
  seasonConfirmed: boolean;
}

export type ShootingLightStatus = "confirmed" | "unconfirmed" | "lapsed" | "not entered";

export interface ShootingLight {
  /** First start and last end of `windows`, on whole minutes; null with a reason in `why`. */
  start: Date | null;
  end: Date | null;
  /** Every open stretch. With more than one, what lies between start and end is not all open. */
  windows: TimeWindow[];
  /** The layer that set each end; of layers that agree, the first. */
  startLayer: ShootingLayer | null;
  endLayer: ShootingLayer | null;
  ruleIds: string[];
  status: ShootingLightStatus;
  why: Record<string, string>;
  /** Sentences to print beside the times. */
  notes: string[];
}

interface LayeredWindow extends TimeWindow {
  startLayer: ShootingLayer;
  endLayer: ShootingLayer;
}

const LAYERS: readonly ShootingLayer[] = ["law", "landRule", "clubRule", "ownRule"];

/** The words of each layer. */
export const LAYER_WORDS: Readonly<Record<ShootingLayer, string>> = {
  law: "law",
  landRule: "land rule",
  clubRule: "club rule",
  ownRule: "own rule",
};

/**
 * Legal shooting light of one civil day: what every rule of every layer leaves open, with the layer that set each end.
 * Times are for a flat horizon; hills never move them. It is an aid: the printed rule of the authority decides, and legal
 * to shoot is neither legal to be there nor enough light to shoot by.
 *
 * @param sunOf   the sun's events of a day at the reference place of a rule; computed when not given
 * @returns `not entered` and no times when no rule of law speaks about this hunt on this date, whatever lesser layers
 *   say; `lapsed` or `unconfirmed` with times that must not be relied on; no times with a reason where nothing is open
 * @throws {RangeError} when the date or the zone is none
 */
export function shootingLight(
  request: ShootingLightRequest,
  sunOf: SunAnchorsOf = (localDate, position) => sunAnchors(localDate, position, request.timezone),
): ShootingLight {
  const facts = huntFacts(request);
  const law = layerRules(request.layers.law ?? [], facts);
  const notes = request.seasonConfirmed ? [] : ["Season not confirmed for this date."];
  if (law.inUse.length === 0) return notEntered(request, [...notes, ...law.missed]);

  const day: RuleDay = { ...request, sunOf: oncePerPlace(sunOf) };
  const ruleIds: string[] = [];
  const statuses: ShootingLightStatus[] = request.seasonConfirmed ? [] : ["unconfirmed"];
  let open: LayeredWindow[] | null = null;
  let reason: string | null = null;
  for (const layer of LAYERS) {
    const rules = layer === "law" ? law.inUse : layerRules(request.layers[layer] ?? [], facts).inUse;
    if (rules.length === 0) continue;
    const hours = rules.map(({ rule }) => ruleWindows(rule, day));
    ruleIds.push(...rules.map(({ rule }) => rule.id));
    statuses.push(
      ...rules.map(({ status }) => status),
      ...hours.map(({ known }) => (known ? "confirmed" : "unconfirmed")),
    );
    notes.push(...rules.flatMap((rule) => rule.notes), ...disagreement(rules, hours, request.timezone));
    notes.push(...rules.flatMap(({ rule }) => aboutNotes(rule, day)));
    for (const { windows, reason: ruleReason } of hours) {
      reason ??= ruleReason;
      open = narrowed(open, windows, layer);
    }
  }
  return result(request, { open: open ?? [], reason, ruleIds, status: worst(statuses), notes });
}

function oncePerPlace(sunOf: SunAnchorsOf): SunAnchorsOf {
  const found = new Map<string, ReturnType<SunAnchorsOf>>();
  return (localDate, position) => {
    const key = `${localDate} ${position.lat} ${position.lon}`;
    const sun = found.get(key) ?? sunOf(localDate, position);
    found.set(key, sun);
    return sun;
  };
}

function huntFacts({
  localDate,
  species,
  method,
  land,
  zone,
  class: className,
}: ShootingLightRequest): HuntFacts {
  const zones = zone === undefined ? [] : typeof zone === "string" ? [zone] : zone;
  return { localDate, species, method, land, class: className ?? null, zones };
}

function narrowed(
  open: LayeredWindow[] | null,
  windows: readonly TimeWindow[],
  layer: ShootingLayer,
): LayeredWindow[] {
  if (open === null) return windows.map((window) => ({ ...window, startLayer: layer, endLayer: layer }));
  return open.flatMap((one) =>
    windows.flatMap((window) => {
      const startsLater = window.start.getTime() > one.start.getTime();
      const endsEarlier = window.end.getTime() < one.end.getTime();
      const both: LayeredWindow = {
        start: startsLater ? window.start : one.start,
        end: endsEarlier ? window.end : one.end,
        startLayer: startsLater ? layer : one.startLayer,
        endLayer: endsEarlier ? layer : one.endLayer,
      };
      return both.start.getTime() < both.end.getTime() ? [both] : [];
    }),
  );
}

function disagreement(rules: readonly RuleInUse[], hours: readonly RuleHours[], timezone: string): string[] {
  const texts = hours.map((hour) => (hour.windows.length > 0 ? spanText(hour.windows, timezone) : "closed"));
  if (new Set(texts).size < 2) return [];
  const each = rules.map(({ rule }, at) => `${rule.id} ${texts[at] ?? ""}`).join(", ");
  return [`CAUTION: rules disagree (${each}); only the time that all of them allow is shown.`];
}

function spanText(windows: readonly TimeWindow[], timezone: string): string {
  const clock = (at: Date) => civilAt(at, timezone).clock;
  return windows.map(({ start, end }) => `${clock(start)}-${clock(end)}`).join(" and ");
}

const STATUS_ORDER: readonly ShootingLightStatus[] = ["confirmed", "unconfirmed", "lapsed"];

function worst(statuses: readonly ShootingLightStatus[]): ShootingLightStatus {
  return (
    STATUS_ORDER[Math.max(0, ...statuses.map((status) => STATUS_ORDER.indexOf(status)))] ?? "unconfirmed"
  );
}

interface Found {
  open: LayeredWindow[];
  reason: string | null;
  ruleIds: string[];
  status: ShootingLightStatus;
  notes: string[];
}

function result(
  request: ShootingLightRequest,
  { open, reason, ruleIds, status, notes }: Found,
): ShootingLight {
  const first = open[0];
  const last = open.at(-1);
  if (first === undefined || last === undefined) {
    const sentence = `No legal shooting time: ${reason ?? "the rules leave no time that all of them allow"}.`;
    return {
      ...nothing(sentence),
      ruleIds,
      status,
      notes: notes.includes(sentence) ? notes : [...notes, sentence],
    };
  }
  const closed = open.slice(1).map((window, at) => ({ start: (open[at] ?? window).end, end: window.start }));
  if (closed.length > 0) notes.push(`Closed in between: ${spanText(closed, request.timezone)}.`);
  return {
    start: first.start,
    end: last.end,
    windows: open.map(({ start, end }) => ({ start, end })),
    startLayer: first.startLayer,
    endLayer: last.endLayer,
    ruleIds,
    status,
    why: {},
    notes,
  };
}

function notEntered(request: ShootingLightRequest, notes: string[]): ShootingLight {
  const hunt = [request.species, request.method, request.land === null ? null : `${request.land} land`];
  const words = hunt.filter((word) => word !== null).join(", ");
  const sentence = `Legal hours not confirmed: no rule of law is entered for ${words || "this hunt"} on ${request.localDate}.`;
  return { ...nothing(sentence), status: "not entered", notes };
}

function nothing(sentence: string): Omit<ShootingLight, "status" | "notes"> {
  const why = { start: sentence, end: sentence, startLayer: sentence, endLayer: sentence };
  return { start: null, end: null, windows: [], startLayer: null, endLayer: null, ruleIds: [], why };
}
