import type { SessionWindow } from "../../light/sessionWindows.ts";
import { LAYER_WORDS, type ShootingLight } from "../../light/shootingLight.ts";
import type { Check } from "../../safety/check.ts";
import { civilAt, isoInZone } from "../../time/civilTime.ts";

/**
 * C1: legal light in one session. No open time in it is a STOP; hours that no rule confirms are NOT CHECKED. An aid: the
 * printed rule of the authority decides.
 */
export function legalCheck(session: SessionWindow, light: ShootingLight, timezone: string): Check {
  const iso = (at: Date | null): string | null => (at === null ? null : isoInZone(at, timezone));
  const clock = (at: Date): string => civilAt(at, timezone).clock;
  const { start, end, startLayer, endLayer, status, ruleIds } = light;
  const base = {
    id: "C1",
    subject: session.id,
    inputs: {
      start: iso(start),
      end: iso(end),
      startLayer,
      endLayer,
      status,
      rules: ruleIds.join(", ") || null,
    },
  };
  const why = light.why.start ?? "legal hours not confirmed";
  if (status === "not entered") return { ...base, result: "NOT CHECKED", text: why };
  if (start === null || end === null || startLayer === null || endLayer === null)
    return { ...base, result: "STOP", text: why };
  if (session.usable.length === 0)
    return { ...base, result: "STOP", text: session.why.usable ?? "No legal shooting time in the session." };
  const hours = `${clock(start)} (${LAYER_WORDS[startLayer]}) to ${clock(end)} (${LAYER_WORDS[endLayer]})`;
  return status === "confirmed"
    ? { ...base, result: "OK", text: `Legal light ${hours}.` }
    : {
        ...base,
        result: "NOT CHECKED",
        text: `Legal light ${hours} by a rule that is ${status}: do not rely on it.`,
      };
}
