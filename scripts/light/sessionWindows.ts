import type { Moment } from "../content/schema/primitives.ts";
import { civilAt } from "../time/civilTime.ts";
import { resolveMoment } from "./moments.ts";
import type { ShootingLight } from "./shootingLight.ts";
import type { SunAnchors } from "./sunAnchors.ts";
import { intersectWindows, type TimeWindow } from "./timeWindows.ts";

export interface SessionFacts {
  id: string;
  from: Moment;
  to: Moment;
}

/** The sessions of an area that names none. */
export const DEFAULT_SESSIONS: readonly SessionFacts[] = [
  { id: "morning", from: { anchor: "firstLight" }, to: { anchor: "clock", at: "10:00" } },
  { id: "evening", from: { anchor: "clock", at: "15:00" }, to: { anchor: "lastLight" } },
];

export interface SessionDay {
  localDate: string;
  timezone: string;
  sun: SunAnchors;
  /** First and last light as the area defines them. */
  light: { firstLight: Date | null; lastLight: Date | null; why: Record<string, string> };
  shooting: Pick<ShootingLight, "start" | "end" | "windows" | "status" | "why">;
}

export interface SessionWindow {
  id: string;
  /** null, both, when there is no such session that day; `why` says it in a sentence. */
  from: Date | null;
  to: Date | null;
  why: Record<string, string>;
  /** The session inside legal shooting light; the session alone where the hours are not confirmed. Empty with `why.usable`. */
  usable: TimeWindow[];
}

/**
 * The sessions of one civil day with the time of each that can be used, in the order given.
 *
 * @returns a session that does not happen that day keeps its place, with null ends and the reason
 */
export function sessionWindows(
  sessions: readonly SessionFacts[] | undefined,
  day: SessionDay,
): SessionWindow[] {
  return (sessions ?? DEFAULT_SESSIONS).map((session) => sessionWindow(session, day));
}

function sessionWindow(session: SessionFacts, day: SessionDay): SessionWindow {
  const from = resolveMoment(session.from, { ...day, side: "start" });
  const to = resolveMoment(session.to, { ...day, side: "end" });
  if (from.at === null) return noSession(session.id, from.why);
  if (to.at === null) return noSession(session.id, to.why);
  if (from.at.getTime() >= to.at.getTime()) {
    const [starts, ends] = [from.at, to.at].map((at) => civilAt(at, day.timezone).clock);
    return noSession(session.id, `it would start at ${starts} and end at ${ends}`);
  }
  const window = { start: from.at, end: to.at };
  const usable =
    day.shooting.status === "confirmed" ? intersectWindows([window], day.shooting.windows) : [window];
  const why: Record<string, string> =
    usable.length > 0
      ? {}
      : { usable: day.shooting.why.start ?? "No legal shooting time lies inside the session." };
  return { id: session.id, from: from.at, to: to.at, why, usable };
}

function noSession(id: string, reason: string): SessionWindow {
  const sentence = `No ${id} session that day: ${reason.replace(/\.$/, "")}.`;
  return { id, from: null, to: null, why: { from: sentence, to: sentence, usable: sentence }, usable: [] };
}
