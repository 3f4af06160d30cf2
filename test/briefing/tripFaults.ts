import type { ComposedPack } from "../../scripts/briefing/composePack.ts";
import type { PackTrip } from "../../scripts/content/schema/packSchema.ts";
import { eachDay } from "../../scripts/time/civilTime.ts";

const STEPS = [
  ...["wake", "leave", "at tree", "aloft", "settled", "first light", "shooting start", "sit until"],
  ...["shooting end", "start down", "out", "ask", "call"],
];

type TripSession = PackTrip["days"][number]["sessions"][number];

/** Faults in the trips of a pack: days or sessions missing, sites in two lists or in none, ladders out of order. */
export function tripFaults({ content, pack, details }: ComposedPack): string[] {
  const sessions = details.sessions.map((session) => session.id).join();
  const siteIds = new Set((pack.sites ?? []).map((site) => site.id));
  return (pack.trips ?? []).flatMap((trip) => {
    const written = content.trips.find((entry) => entry.id === trip.id);
    if (written === undefined) return [`trips ${trip.id}: no such trip`];
    const allowed = new Set(written.facts.allowedSites ?? siteIds);
    const days = trip.days.map((day) => day.localDate);
    const faults = days.join() === eachDay(trip.from, trip.to).join() ? [] : ["not every day of the trip"];
    for (const day of trip.days) {
      if (day.sessions.map((session) => session.session).join() !== sessions)
        faults.push(`${day.localDate}: not the sessions of the area in their order`);
      for (const session of day.sessions) {
        faults.push(
          ...sessionFaults(session, allowed).map((f) => `${day.localDate} ${session.session}: ${f}`),
        );
      }
    }
    return faults.map((fault) => `trips ${trip.id}: ${fault}`);
  });
}

function sessionFaults(session: TripSession, allowed: ReadonlySet<string>): string[] {
  const { ranking, stopped, forecast, schedule, from, to } = session;
  const ranked = (ranking ?? []).map((row) => row.site);
  const barred = stopped.map((row) => row.site);
  const both = ranked.filter((site) => barred.includes(site));
  const faults = both.map((site) => `${site} is ranked and stopped`);
  if (new Set(ranked).size < ranked.length) faults.push("a site is ranked twice");
  for (const site of ranked) if (!allowed.has(site)) faults.push(`${site} is ranked and not of this trip`);
  if (ranking !== null && from !== null) {
    const missing = [...allowed].filter((site) => !ranked.includes(site) && !barred.includes(site));
    faults.push(...missing.map((site) => `${site} is neither ranked nor stopped`));
  }
  if (forecast === null && ranking !== null && from !== null) faults.push("a ranking without a forecast");
  for (const row of ranking ?? []) {
    const isOut =
      (row.sitFrom !== null && Date.parse(row.sitFrom) < Date.parse(from ?? "")) ||
      (row.sitUntil !== null && Date.parse(row.sitUntil) > Date.parse(to ?? ""));
    if (isOut) faults.push(`${row.site}: a sit outside the session`);
    if (row.verdict === "suits" && row.sitFrom === null) faults.push(`${row.site} suits without a sit`);
  }
  return [...faults, ...bestFirstFaults(ranking ?? []), ...ladderFaults(schedule)];
}

const RANK = ["suits", "marginal", "avoid", "not assessed"];

function bestFirstFaults(ranking: NonNullable<TripSession["ranking"]>): string[] {
  return ranking.slice(1).flatMap((row, i) => {
    const before = ranking[i]!;
    const turn = RANK.indexOf(row.verdict) - RANK.indexOf(before.verdict);
    const isBetter = turn < 0 || (turn === 0 && (row.cleanShare ?? 0) > (before.cleanShare ?? 0));
    return isBetter ? [`${row.site} is better than ${before.site} before it`] : [];
  });
}

/** For each person the steps come in their order, and by the clock from waking to being settled and from down to out. */
function ladderFaults(schedule: TripSession["schedule"]): string[] {
  const people = [...new Set(schedule.flatMap((row) => row.who))];
  return people.flatMap((who) => {
    const own = schedule.filter((row) => row.who.includes(who));
    const order = own.map((row) => STEPS.indexOf(row.what));
    const faults = order.some((step, i) => i > 0 && step < order[i - 1]!) ? [`steps of ${who}`] : [];
    for (const stretch of [STEPS.slice(0, 5), STEPS.slice(9)]) {
      const times = own.filter((row) => stretch.includes(row.what)).map((row) => Date.parse(row.at));
      if (times.some((at, i) => i > 0 && at < times[i - 1]!)) faults.push(`times of ${who}`);
    }
    return faults;
  });
}
