import { describe, expect, test } from "vitest";
import { resolveMoment } from "../../scripts/light/moments.ts";
import { DEFAULT_SESSIONS, type SessionDay, sessionWindows } from "../../scripts/light/sessionWindows.ts";
import { checkDay } from "./shootingRules.ts";

const at = (clockText: string) => new Date(`2026-04-04T${clockText}:00Z`);

function day(other: Partial<SessionDay> = {}): SessionDay {
  return {
    localDate: "2026-04-04",
    timezone: "UTC",
    sun: checkDay(),
    light: { firstLight: at("06:15"), lastLight: at("17:45"), why: {} },
    shooting: {
      start: at("06:43"),
      end: at("17:18"),
      windows: [{ start: at("06:43"), end: at("17:18") }],
      status: "confirmed",
      why: {},
    },
    ...other,
  };
}

describe("sessions of a day", () => {
  test("an area that names none has first light to 10:00 and 15:00 to last light, inside legal light where usable", () => {
    expect(sessionWindows(undefined, day())).toEqual([
      {
        id: "morning",
        from: at("06:15"),
        to: at("10:00"),
        why: {},
        usable: [{ start: at("06:43"), end: at("10:00") }],
      },
      {
        id: "evening",
        from: at("15:00"),
        to: at("17:45"),
        why: {},
        usable: [{ start: at("15:00"), end: at("17:18") }],
      },
    ]);
  });

  test.each(["unconfirmed", "lapsed", "not entered"] as const)(
    "hours that are %s leave the session alone",
    (status) => {
      const [morning] = sessionWindows(undefined, day({ shooting: { ...day().shooting, status } }));
      expect(morning?.usable).toEqual([{ start: at("06:15"), end: at("10:00") }]);
    },
  );

  test("a closed day leaves the session without usable time and says why", () => {
    const closed = {
      start: null,
      end: null,
      windows: [],
      status: "confirmed" as const,
      why: { start: "rule x closes Sundays" },
    };
    const [morning] = sessionWindows(undefined, day({ shooting: closed }));
    expect(morning).toMatchObject({
      from: at("06:15"),
      usable: [],
      why: { usable: "rule x closes Sundays" },
    });
  });

  test("a midday closure cuts a session in two", () => {
    const windows = [
      { start: at("06:43"), end: at("11:00") },
      { start: at("14:00"), end: at("17:18") },
    ];
    const allDay = { id: "all-day", from: { anchor: "sunrise" as const }, to: { anchor: "sunset" as const } };
    const [session] = sessionWindows([allDay], day({ shooting: { ...day().shooting, windows } }));
    expect(session?.usable.map(({ start }) => start)).toEqual([at("06:43"), at("14:00")]);
  });

  test("first light after 10:00 means no morning session that day, and says so", () => {
    const [morning] = sessionWindows(
      DEFAULT_SESSIONS,
      day({ light: { firstLight: at("10:12"), lastLight: at("13:00"), why: {} } }),
    );
    expect(morning).toMatchObject({ from: null, to: null, usable: [] });
    expect(morning?.why.from).toBe("No morning session that day: it would start at 10:12 and end at 10:00.");
  });

  test("a session that starts when it ends does not happen", () => {
    const [morning] = sessionWindows(
      DEFAULT_SESSIONS,
      day({ light: { firstLight: at("10:00"), lastLight: at("13:00"), why: {} } }),
    );
    expect(morning?.from).toBeNull();
  });

  test("without first light that day the reason is the sun's", () => {
    const light = {
      firstLight: null,
      lastLight: null,
      why: { firstLight: "the sun does not sink to 6° below the horizon" },
    };
    const [morning] = sessionWindows(undefined, day({ light }));
    expect(morning?.why.to).toBe(
      "No morning session that day: the sun does not sink to 6° below the horizon.",
    );
  });

  test("a session may count from legal hours, and does not happen where they are not known", () => {
    const legal = {
      id: "legal",
      from: { anchor: "shootingStart" as const, offsetMin: -20 },
      to: { anchor: "shootingEnd" as const },
    };
    expect(sessionWindows([legal], day())[0]?.from).toEqual(at("06:23"));
    const unknown = {
      start: null,
      end: null,
      windows: [],
      status: "not entered" as const,
      why: { start: "Legal hours not confirmed." },
    };
    expect(sessionWindows([legal], day({ shooting: unknown }))[0]?.why.from).toBe(
      "No legal session that day: Legal hours not confirmed.",
    );
  });
});

describe("moments of the day", () => {
  const context = { localDate: "2026-04-04", timezone: "UTC", sun: checkDay(), side: "start" as const };

  test("an offset moves the sun's event, clock limits keep it inside", () => {
    expect(resolveMoment({ anchor: "sunset", offsetMin: -90 }, context).at).toEqual(
      new Date("2026-04-04T15:48:10Z"),
    );
    expect(resolveMoment({ anchor: "sunset", offsetMin: -90, notAfter: "15:00" }, context).at).toEqual(
      at("15:00"),
    );
    expect(resolveMoment({ anchor: "sunset", offsetMin: -90, notBefore: "16:00" }, context).at).toEqual(
      at("16:00"),
    );
  });

  test("an event that does not happen is null with its reason", () => {
    const sun = { ...checkDay(), sunset: null };
    expect(resolveMoment({ anchor: "sunset" }, { ...context, sun })).toEqual({
      at: null,
      why: "there is no sunset that day",
    });
    expect(resolveMoment({ anchor: "firstLight" }, context)).toEqual({
      at: null,
      why: "first and last light are not known",
    });
    expect(resolveMoment({ anchor: "shootingEnd" }, context)).toEqual({
      at: null,
      why: "legal hours are not confirmed",
    });
  });
});
