import type { AreaContent } from "../content/areaContent.ts";
import { type SessionWindow, sessionWindows } from "../light/sessionWindows.ts";
import type { ShootingLight } from "../light/shootingLight.ts";
import { solarDay } from "../light/solarDay.ts";
import type { SunAnchorsOf } from "../light/sunAnchors.ts";

/** The sessions of one day at the area's centre, each with the time of it that can be used. */
export function daySessions(
  area: AreaContent,
  localDate: string,
  shooting: ShootingLight,
  sunOf: SunAnchorsOf,
): SessionWindow[] {
  const { centre, timezone, firstLightSunDeg, sessions } = area.facts;
  const light = solarDay(localDate, centre, timezone, firstLightSunDeg);
  return sessionWindows(sessions, { localDate, timezone, sun: sunOf(localDate, centre), light, shooting });
}

/**
 * The stretch of a session for date-free tables: its longest usable time; the whole session where the law closes it on that
 * very day, since the table stands for other days too. Null when there is no such session.
 */
export function tableStretch(session: SessionWindow): { from: Date; to: Date } | null {
  if (session.from === null || session.to === null) return null;
  const longest = session.usable.toSorted((a, b) => lengthMs(b) - lengthMs(a))[0];
  return longest === undefined
    ? { from: session.from, to: session.to }
    : { from: longest.start, to: longest.end };
}

function lengthMs(window: { start: Date; end: Date }): number {
  return window.end.getTime() - window.start.getTime();
}
