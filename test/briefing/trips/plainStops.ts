import type { AreaContent } from "../../../scripts/content/areaContent.ts";
import type { PackTrip } from "../../../scripts/content/schema/packSchema.ts";
import { TREE_TICKS } from "../../../scripts/content/schema/siteSchema.ts";
import { SHARED } from "../smallArea.ts";

type Session = PackTrip["days"][number]["sessions"][number];
type Trip = AreaContent["trips"][number];
type Site = AreaContent["sites"][number];

// STOPs read off the content by hand, in the plainest form, apart from the program's own checks: each only finds what is
// surely a STOP, by the defaults of the safety rules.

const SPEED = { mps: 3.6, kmh: 1, mph: 1.609344, kn: 1.852 }; // to km/h

/** Whether the weather of the hours that hold in a session forbids to climb. */
export function isStormy(trip: Trip, localDate: string, session: Session): boolean {
  const { forecast } = trip.facts;
  if (forecast === undefined || session.from === null || session.to === null) return false;
  const hour = (text: string): string => text.slice(11, 16);
  const rows = forecast.rows.filter((row) => row.localDate === localDate);
  const first = rows.findLast((row) => (row.hour ?? "") <= hour(session.from!))?.hour ?? "00:00";
  const factor = SPEED[forecast.units.speed];
  return rows
    .filter((row) => (row.hour ?? "") >= first && (row.hour ?? "") < hour(session.to!))
    .some(
      (row) =>
        row.thunder === true ||
        row.freezingRain === true ||
        (row.gust ?? 0) * factor >= 50 ||
        (row.windFrom !== "calm" && (row.windSpeed ?? 0) * factor >= 39),
    );
}

/** Whether the site itself may not be climbed or stood on. */
export function isBarred(area: AreaContent, site: Site, localDate: string): boolean {
  const { condition } = site.facts.tree ?? { condition: null };
  const hasFault = condition !== null && TREE_TICKS.some((tick) => condition[tick] === "fault");
  const ofBlock = area.facts.permission.filter((entry) => entry.block === site.facts.block);
  const deciding =
    ofBlock.length > 0 ? ofBlock : area.facts.permission.filter((entry) => entry.block === undefined);
  const isAllowed =
    deciding.length === 0 ||
    deciding.some((entry) => entry.from <= localDate && localDate <= entry.to && entry.withdrawn !== true);
  return hasFault || !isAllowed || (condition?.leanDeg ?? 0) > 10;
}

/** Whether the hunter may not climb there: harness, load, or a stand that does not fit tree or height. */
export function isUnfit(trip: Trip, hunterId: string, site: Site, localDate: string): boolean {
  const hunter = trip.facts.hunters.find(({ id }) => id === hunterId)!;
  const stand = SHARED.stands.find(({ id }) => id === (site.facts.stand?.standId ?? hunter.standId));
  const { replaceBy, fallen } = hunter.harness;
  const isWornOut =
    fallen === true || (replaceBy !== null && localDate.slice(0, replaceBy.length) > replaceBy);
  const loadKg = Object.values(hunter.loadKg).reduce<number>((sum, kg) => sum + (kg ?? 0), 0);
  const isHeavy = loadKg > (stand?.ratedLoadKg ?? Number.POSITIVE_INFINITY) + 1e-6;
  const isHigh = site.facts.platformHeightM > (stand?.maxPlatformHeightM ?? Number.POSITIVE_INFINITY);
  const trunkMm = (site.facts.tree?.girthMm ?? Number.NaN) / Math.PI;
  const isMisfit =
    trunkMm > (stand?.trunkMaxMm ?? Number.POSITIVE_INFINITY) || trunkMm < (stand?.trunkMinMm ?? 0);
  return isWornOut || isHeavy || isHigh || isMisfit;
}

/** Every way in which a day shows something that a plain STOP forbids as if it could be used. */
export function stopFaults(area: AreaContent, trip: Trip, day: PackTrip["days"][number]): string[] {
  const { localDate } = day;
  const siteOf = (id: string): Site => area.sites.find((site) => site.id === id)!;
  return day.sessions.flatMap((session) => {
    const at = `${trip.id} ${localDate} ${session.session}`;
    const isClosed = session.shootingLight.status === "confirmed" && session.shootingLight.start === null;
    const isOff = isClosed || isStormy(trip, localDate, session);
    const isSiteOff = (id: string): boolean => isOff || isBarred(area, siteOf(id), localDate);
    const faults = (session.ranking ?? [])
      .filter((row) => isSiteOff(row.site))
      .map((row) => `${at}: ${row.site} is ranked`);
    const stopped = session.stopped.map((row) => row.site);
    faults.push(
      ...(session.ranking ?? [])
        .filter((row) => stopped.includes(row.site))
        .map((row) => `${at}: ${row.site} is ranked and stopped`),
    );
    const allowed = trip.facts.allowedSites ?? area.sites.map(({ id }) => id);
    faults.push(
      ...allowed
        .filter((id) => isSiteOff(id) && session.from !== null && !stopped.includes(id))
        .map((id) => `${at}: ${id} is not stopped`),
    );
    for (const sit of session.assignment) {
      const mayNot = isSiteOff(sit.site) || isUnfit(trip, sit.hunter, siteOf(sit.site), localDate);
      const isMarked = sit.reason.startsWith("STOP");
      const isSent = session.schedule.some((row) => row.who.includes(sit.hunter));
      if (mayNot && !isMarked) faults.push(`${at}: ${sit.hunter} at ${sit.site} is not marked`);
      if (isMarked && isSent) faults.push(`${at}: ${sit.hunter} at ${sit.site} is sent out`);
      if (!isMarked && !isSent) faults.push(`${at}: ${sit.hunter} at ${sit.site} has no times`);
    }
    const written = trip.facts.sits.filter(
      (sit) => sit.localDate === localDate && sit.session === session.session,
    );
    const kept = session.assignment.map((sit) => `${sit.hunter} ${sit.site} ${sit.by}`).sort();
    const expected = written.map((sit) => `${sit.hunter} ${sit.site} owner`).sort();
    if (kept.join() !== expected.join()) faults.push(`${at}: the owner's sits were changed`);
    return faults;
  });
}
