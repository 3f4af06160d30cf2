import { civilAt, endOfDay, resolveClock, startOfDay } from "../time/civilTime.ts";

const HOUR_MS = 3_600_000;
const HALF_HOUR_MS = HOUR_MS / 2;

export interface ClockTick {
  x: number;
  at: Date;
  /** "06", or both readings "03/02" where the clock changes */
  label: string;
}

/** One clock axis for every chart of a day: position is elapsed time, so an hour is always as long as an hour. */
export interface ClockAxis {
  leftMm: number;
  rightMm: number;
  from: Date;
  to: Date;
  /** place of an instant; outside the axis it is held at the nearer end */
  x(at: Date): number;
  /** the instant of a place, the inverse of x on the axis */
  at(xMm: number): Date;
  ticks: ClockTick[];
}

/**
 * The axis of a civil day from 04 to 21 o'clock, widened by whole hours until it holds every instant given that lies in
 * the day. On a day with a clock change hours still have one length, and the tick at the change prints both readings.
 *
 * @param stepHours  hours between ticks, 1 to 6
 */
export function clockAxis(
  localDate: string,
  timezone: string,
  place: { leftMm: number; rightMm: number; stepHours: number },
  mustHold: readonly Date[],
): ClockAxis {
  const { leftMm, rightMm } = place;
  if (!(rightMm > leftMm))
    throw new RangeError(`rightMm must be over leftMm, found ${rightMm} and ${leftMm}`);
  const dayStart = startOfDay(localDate, timezone);
  const dayEnd = endOfDay(localDate, timezone);
  const held = mustHold.filter((at) => dayStart <= at && at <= dayEnd).map(Number);
  const from = new Date(
    wholeHour(Math.min(...held, clockInstant(localDate, "04:00", timezone)), dayStart, Math.floor),
  );
  const to = new Date(
    Math.min(
      wholeHour(Math.max(...held, clockInstant(localDate, "21:00", timezone)), dayStart, Math.ceil),
      Number(dayEnd),
    ),
  );
  const mmPerMs = (rightMm - leftMm) / (Number(to) - Number(from));
  const x = (at: Date): number =>
    leftMm + (Math.min(Math.max(Number(at), Number(from)), Number(to)) - Number(from)) * mmPerMs;
  return {
    leftMm,
    rightMm,
    from,
    to,
    x,
    at: (xMm) => new Date(Math.round(Number(from) + (xMm - leftMm) / mmPerMs)),
    ticks: ticksOf(from, to, timezone, place.stepHours).map((tick) => ({ ...tick, x: x(tick.at) })),
  };
}

function ticksOf(from: Date, to: Date, timezone: string, stepHours: number): { at: Date; label: string }[] {
  const ticks: { at: Date; label: string }[] = [];
  for (let ms = Number(from); ms <= Number(to); ms += HALF_HOUR_MS) {
    const at = new Date(ms);
    const here = civilAt(at, timezone);
    const before = civilAt(new Date(ms - 1), timezone);
    const [hour, minute] = here.clock.split(":").map(Number) as [number, number];
    if (here.utcOffsetMin !== before.utcOffsetMin && ms > Number(from)) {
      ticks.push({ at, label: `${hourAfter(before.clock)}/${here.clock.slice(0, 2)}` });
    } else if (minute === 0 && hour % stepHours === 0) {
      ticks.push({ at, label: ms === Number(to) && hour === 0 ? "24" : here.clock.slice(0, 2) });
    }
  }
  return ticks;
}

/** The hour that the minute after HH:59 begins. */
function hourAfter(clock: string): string {
  return String((Number(clock.slice(0, 2)) + 1) % 24).padStart(2, "0");
}

function clockInstant(localDate: string, clock: string, timezone: string): number {
  const resolved = resolveClock(localDate, clock, timezone);
  if (resolved.kind === "one") return Number(resolved.at);
  return resolved.kind === "repeated" ? Number(resolved.first) : Number(startOfDay(localDate, timezone));
}

function wholeHour(ms: number, dayStart: Date, round: (hours: number) => number): number {
  return Number(dayStart) + round((ms - Number(dayStart)) / HOUR_MS) * HOUR_MS;
}
