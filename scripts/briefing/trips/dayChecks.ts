import type { ShootingRule } from "../../content/schema/shootingRuleSchema.ts";
import type { Check } from "../../safety/check.ts";
import { contactGaps } from "../../safety/contactGaps.ts";
import { factAge } from "../../safety/factAge.ts";
import { fireBan } from "../../safety/fireBan.ts";
import { orderChecks } from "../../safety/orderChecks.ts";
import { idleHunterChecks } from "./gearChecks.ts";
import type { HunterSit } from "./hunterSits.ts";
import type { JudgedSession } from "./judgedSession.ts";
import { sitChecks } from "./sitChecks.ts";
import type { TripDayLight, TripFrame } from "./tripFrame.ts";

const OF_THE_SITE = ["C2", "C22", "C23", "C30"];

/**
 * Every check of one trip day in the order of a page: legal light and weather of each session, hunters and their kit, their
 * sits, the trees they climb, the ways to reach them, the fire ban, and the age of the rules in use.
 */
export function dayChecks(
  sessions: readonly { judged: JudgedSession; sits: readonly HunterSit[]; apart: readonly Check[] }[],
  day: TripDayLight,
  frame: TripFrame,
): Check[] {
  const { localDate } = day;
  const sits = sessions.flatMap(({ judged, sits: own }) =>
    own.map((sit) => ({
      sit,
      company: {
        session: judged.window.id,
        localDate,
        forecast: judged.forecast,
        isAlone: own.filter(({ times }) => times !== null).length === 1,
      },
    })),
  );
  const idle = frame.trip.facts.hunters.filter((hunter) =>
    sits.every(({ sit }) => sit.hunter.id !== hunter.id),
  );
  const { area } = frame.context;
  return orderChecks(
    withoutCopies([
      ...sessions.flatMap(({ judged }) => judged.checks),
      ...sessions.flatMap(({ judged, apart }) => apart.map((check) => inSession(check, judged.window.id))),
      ...sits.flatMap(({ sit, company }) => sitChecks(sit, company, frame)),
      ...sits.flatMap(({ sit }) => sit.entry.checks.filter(({ id }) => OF_THE_SITE.includes(id))),
      ...idle.flatMap((hunter) => idleHunterChecks(hunter, localDate, frame)),
      contacts(frame),
      fireBan({ subject: area.content.id, isBanned: null }),
      ...ruleAges(day, frame),
    ]),
  );
}

function inSession(check: Check, session: string): Check {
  return {
    ...check,
    text: `${session.charAt(0).toUpperCase()}${session.slice(1)}: ${check.text}`,
    inputs: { ...check.inputs, session },
  };
}

/** What a hunter's own contact is stays private: only that one is entered is told. */
function contacts({ trip, context }: TripFrame): Check {
  const { coverage, radio } = context.area.content.facts.emergency;
  const ofHunters = trip.facts.hunters.map(({ name, contact }): [string, string | null] => [
    `contact of ${name}`,
    contact === undefined ? null : "entered",
  ]);
  return contactGaps({
    subject: trip.id,
    notes: {
      "phone coverage": coverage ?? null,
      radio: radio ?? null,
      "check-in": trip.facts.checkIn ?? null,
      ...Object.fromEntries(ofHunters),
    },
  });
}

function ruleAges({ shooting, localDate }: TripDayLight, { context, limits }: TripFrame): Check[] {
  const layers = Object.values(context.area.content.facts.shootingLight) as (ShootingRule[] | undefined)[];
  const rules = layers.flatMap((layer) => layer ?? []).filter(({ id }) => shooting.ruleIds.includes(id));
  return rules.map(({ id, source }) =>
    factAge({ subject: id, checkedOn: source.checkedOn, shownOn: localDate }, limits),
  );
}

function withoutCopies(checks: readonly Check[]): Check[] {
  const seen = new Map(checks.map((check) => [JSON.stringify(check), check]));
  return [...seen.values()];
}
