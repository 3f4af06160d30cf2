import { describe, expect, test } from "vitest";
import type { PhaseSpan } from "../../scripts/air/phaseSpans.ts";
import type { SlopePhases } from "../../scripts/air/slopeAirDay.ts";
import { packPhases } from "../../scripts/briefing/composePhases.ts";
import { rangeToModelSteps, toModelStep } from "../../scripts/briefing/modelTime.ts";

const at = (clock: string): Date => new Date(`2026-06-20T${clock}Z`);

describe("times of the model on steps of five minutes", () => {
  test.each([
    ["07:52:29", "07:50:00"],
    ["07:52:30", "07:55:00"],
    ["07:55:00", "07:55:00"],
    ["23:58:00", "24:00:00"],
  ])("%s becomes %s", (clock, step) => {
    expect(toModelStep(at(clock))).toEqual(step === "24:00:00" ? new Date("2026-06-21T00:00:00Z") : at(step));
  });

  test("a range goes outward and keeps its time", () => {
    expect(rangeToModelSteps([at("07:31:00"), at("07:46:00")])).toEqual([at("07:30:00"), at("07:50:00")]);
    expect(rangeToModelSteps([at("07:30:00"), at("07:45:00")])).toEqual([at("07:30:00"), at("07:45:00")]);
  });
});

describe("the phases of a day as a pack writes them", () => {
  const span = (phase: PhaseSpan["phase"], from: string, to: string): PhaseSpan => ({
    ...{ phase, from: at(from), to: to === "24:00:00" ? new Date("2026-06-21T00:00:00Z") : at(to) },
    ...{ fromRange: null, toRange: null, speedMps: null, driftToDeg: null, mayNotHappen: false, why: {} },
  });
  const dayOf = (...spans: PhaseSpan[]): SlopePhases => ({
    ...{ start: at("00:00:00"), end: new Date("2026-06-21T00:00:00Z"), spans },
    ...{ sunOn: null, sunLeaves: null, why: {} },
    directions: { fallToDeg: 45, riseToDeg: 225, why: null },
  });
  const written = (...spans: PhaseSpan[]): string[] =>
    packPhases("2026-06-20", dayOf(...spans), "UTC").spans.map(
      (one) => `${one.phase} ${one.from.slice(11, 16)}-${one.to.slice(11, 16)}`,
    );

  test("inner times stand on steps, midnight where it is", () => {
    const spans = [
      span("falling", "00:00:00", "07:51:00"),
      span("turning", "07:51:00", "08:33:00"),
      span("rising", "08:33:00", "24:00:00"),
    ];
    expect(written(...spans)).toEqual(["falling 00:00-07:50", "turning 07:50-08:35", "rising 08:35-00:00"]);
  });

  // Near midnight, as under the midnight sun, a spell of two minutes has no step of its own.
  test("a spell too short for a step beside midnight does not leave an empty span", () => {
    const spans = [
      span("rising", "00:00:00", "00:02:00"),
      span("turning", "00:02:00", "23:58:00"),
      span("falling", "23:58:00", "24:00:00"),
    ];
    expect(written(...spans)).toEqual(["turning 00:00-00:00"]);
    const packed = packPhases("2026-06-20", dayOf(...spans), "UTC").spans;
    expect([packed[0]!.fromRange, packed[0]!.toRange]).toEqual([null, null]);
    expect(packed[0]!.why).toMatchObject({ fromRange: "midnight", toRange: "midnight" });
  });
});
