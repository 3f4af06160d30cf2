import { type Check, type CheckResult, combined } from "./check.ts";
import { forecastAge } from "./factAge.ts";
import { orderChecks } from "./orderChecks.ts";
import type { SafetyLimits } from "./safetyLimits.ts";
import { thunder } from "./thunder.ts";
import { freezingRain, windChill } from "./windChill.ts";
import { windOnTree } from "./windOnTree.ts";

/** One row of a forecast that holds in a session; null = not known. */
export interface SessionWeather {
  windSpeedMps: number | null;
  gustMps: number | null;
  thunder: boolean | null;
  freezingRain: boolean | null;
  tempC: number | null;
}

const UNKNOWN: SessionWeather = {
  windSpeedMps: null,
  gustMps: null,
  thunder: null,
  freezingRain: null,
  tempC: null,
};

/**
 * The weather checks of one session (C10, C11, C26, C29 and its freezing rain), each by its worst hour. Without a row all
 * are NOT CHECKED.
 *
 * @param facts.weather   the rows of the forecast that hold in the session
 */
export function sessionChecks(
  facts: {
    session: string;
    timezone: string;
    weather: readonly SessionWeather[];
    issuedAt: Date | null;
    sessionStart: Date | null;
  },
  limits: SafetyLimits,
): Check[] {
  const { session: subject, timezone, issuedAt, sessionStart } = facts;
  const hours = facts.weather.length > 0 ? facts.weather : [UNKNOWN];
  return orderChecks([
    worstHour(
      hours.map((hour) =>
        windOnTree({ subject, windSpeedMps: hour.windSpeedMps, gustMps: hour.gustMps }, limits),
      ),
    ),
    worstHour(hours.map((hour) => thunder({ subject, thunder: hour.thunder }))),
    worstHour(
      hours.map((hour) => windChill({ subject, tempC: hour.tempC, windSpeedMps: hour.windSpeedMps }, limits)),
    ),
    worstHour(hours.map((hour) => freezingRain({ subject, freezingRain: hour.freezingRain }))),
    forecastAge({ subject, timezone, issuedAt, sessionStart }, limits),
  ]);
}

/** The first check with the result of them all; of equal ones the one with the strongest wind. */
function worstHour(checks: readonly Check[]): Check {
  const result: CheckResult = combined(checks.map((check) => check.result));
  const same = checks.filter((check) => check.result === result);
  const windOf = ({ inputs }: Check) => Number(inputs.windSpeedMps ?? 0) + Number(inputs.gustMps ?? 0);
  const coldOf = ({ inputs }: Check) => Number(inputs.windChillC ?? 0);
  return same.reduce((worst, check) => {
    if (check.inputs.windChillC === undefined) return windOf(check) > windOf(worst) ? check : worst;
    return coldOf(check) < coldOf(worst) ? check : worst;
  });
}
