import { describe, expect, test } from "vitest";
import {
  airMass,
  clearBeamWm2,
  clearCoolingWm2,
  clearDiffuseWm2,
  clearGlobalWm2,
  cloudCoolingShare,
  cloudGlobalShare,
  cosIncidence,
  earthSunFactor,
  netRadiation,
  type RadiationQuestion,
  saturationVapourPressureKpa,
} from "../../scripts/air/radiation.ts";
import { sunTable } from "../../scripts/light/sunTable.ts";
import { constants } from "./planeSite.ts";

const RADIAN = Math.PI / 180;

describe("sun and sky by published figures", () => {
  test.each([
    [90, 0.9997],
    [10, 5.586],
    [0.1, 36.4668],
    [2, 19.4332],
    [60, 1.154],
    [30, 1.9943],
    [15, 3.8129],
    [5, 10.3058],
  ])(
    "relative air mass at %f deg is %f (Kasten and Young 1989; tolerance: the digits printed)",
    (altitude, mass) => {
      expect(Math.abs(airMass(altitude, 0, constants) - mass)).toBeLessThan(0.001);
    },
  );

  test.each([
    [5, 48.63],
    [10, 135.742],
    [30, 487.894],
    [50, 778.767],
    [90, 1035.092],
  ])(
    "clear global at %f deg is %f W/m2 (Haurwitz 1945; tolerance: the digits printed)",
    (altitude, global) => {
      expect(Math.abs(clearGlobalWm2(Math.sin(altitude * RADIAN), 1, constants) - global)).toBeLessThan(0.01);
    },
  );

  test.each([
    [90, 947.2],
    [60, 913.3],
    [30, 765.5],
    [20, 649.0],
    [10, 430.6],
    [5, 238.8],
  ])(
    "clear beam at %f deg is %f W/m2 with 1353 (Meinel 1976, from memory; tolerance: digits)",
    (altitude, beam) => {
      const path = airMass(altitude, 0, constants) ** 0.678;
      const ours = clearBeamWm2(path, 1, Math.log(0.7), constants) * (1353 / constants.solarConstantWm2);
      expect(Math.abs(ours - beam)).toBeLessThan(0.2);
    },
  );

  test("cloud leaves of global what Kasten and Czeplak (1980) give for 0 to 8 oktas", () => {
    const published = [1, 0.9994, 0.9933, 0.9733, 0.929, 0.8483, 0.718, 0.5237, 0.25];
    published.forEach((share, okta) => {
      expect(Math.abs(cloudGlobalShare(okta / 8, constants) - share)).toBeLessThan(0.0005);
    });
  });

  test("earth-sun distance, vapour pressure: FAO-56 examples 3 and 8 (tolerance: the digits printed)", () => {
    expect(earthSunFactor(246, constants)).toBeCloseTo(0.985, 3);
    expect(Math.abs(saturationVapourPressureKpa(24.5) - 3.075)).toBeLessThan(0.001);
    expect(Math.abs(saturationVapourPressureKpa(15) - 1.705)).toBeLessThan(0.001);
  });

  test("a day's long-wave loss is 3.5 MJ/m2 in FAO-56 example 11 (tolerance: the digit printed)", () => {
    const loss = (tempC: number): number => clearCoolingWm2(tempC, 2.1 / saturationVapourPressureKpa(tempC));
    const cloudShare = ((1 - 14.5 / 18.8) / 0.75) ** (1 / 3.4);
    const dayMj = ((loss(25.1) + loss(19.1)) / 2) * cloudCoolingShare(cloudShare, constants) * 0.0864;
    expect(Math.abs(dayMj - 3.5)).toBeLessThan(0.05);
  });

  test.each([
    [6.329, 120.483, [0.5237, 0.3476, -0.3328, -0.1566]],
    [24.44, 142.959, [0.6325, 0.7216, 0.0841, -0.005]],
    [33.776, 179.998, [0.4815, 0.8971, 0.4815, 0.0659]],
    [22.6, 220.111, [0.0354, 0.6858, 0.6302, -0.0202]],
    [8.965, 236.92, [-0.2789, 0.4045, 0.5488, -0.1346]],
  ])(
    "sun at %f, %f on 30 deg slopes facing E, S, W, N (computed with another almanac; its digits)",
    (h, azimuth, all) => {
      [90, 180, 270, 0].forEach((aspect, i) => {
        expect(Math.abs(cosIncidence(h, azimuth, 30, aspect) - (all[i] as number))).toBeLessThan(1e-4);
      });
    },
  );

  test("the sun stands 25.187 deg off a 30 deg plane (Reda and Andreas 2003, table A5.1)", () => {
    const ours = Math.acos(cosIncidence(90 - 50.11162, 194.34024, 30, 170)) / RADIAN;
    expect(Math.abs(ours - 25.187)).toBeLessThan(1e-4 + 5e-6);
  });

  test.each([
    [43, 35.2, 0.3],
    [38.54, 33.7, 0.1],
  ])(
    "a tilted plane at %f N, declination -14, 10:30 solar: %f deg (Duffie and Beckman 1.6.1, from memory)",
    (lat, angle, tolerance) => {
      const [phi, dec, hour] = [lat * RADIAN, -14 * RADIAN, -22.5 * RADIAN];
      const sinH = Math.sin(phi) * Math.sin(dec) + Math.cos(phi) * Math.cos(dec) * Math.cos(hour);
      const fromSouth = Math.atan2(
        Math.sin(hour),
        Math.cos(hour) * Math.sin(phi) - Math.tan(dec) * Math.cos(phi),
      );
      const ours =
        Math.acos(cosIncidence(Math.asin(sinH) / RADIAN, 180 + fromSouth / RADIAN, 45, 195)) / RADIAN;
      expect(Math.abs(ours - angle)).toBeLessThan(tolerance);
    },
  );
});

describe("the clear day against FAO-56 clear-sky radiation at sea level", () => {
  // Allen et al. 1998, equations 21, 24, 25, 37, written out here on their own.
  const rsoMj = (lat: number, day: number): { rso: number; noonDeg: number } => {
    const phi = lat * RADIAN;
    const dr = 1 + 0.033 * Math.cos((2 * Math.PI * day) / 365);
    const dec = 0.409 * Math.sin((2 * Math.PI * day) / 365 - 1.39);
    const ws = Math.acos(Math.max(-1, Math.min(1, -Math.tan(phi) * Math.tan(dec))));
    const ra =
      ((24 * 60) / Math.PI) *
      0.082 *
      dr *
      (ws * Math.sin(phi) * Math.sin(dec) + Math.cos(phi) * Math.cos(dec) * Math.sin(ws));
    return { rso: 0.75 * ra, noonDeg: 90 - Math.abs(lat - dec / RADIAN) };
  };

  test("FAO-56 examples 8 and 17 hold in the reference itself: 18.8 x 32.2 / 25.1 and 28.54 MJ/m2", () => {
    expect(rsoMj(-20, 246).rso / 0.75).toBeCloseTo(32.2, 1);
    expect(Math.abs(rsoMj(13 + 44 / 60, 105).rso / 0.75 - 38.06)).toBeLessThan(0.01);
  });

  test.each([-45, -20, 0, 20, 36, 45, 55, 60])(
    "at latitude %i the day sums lie in the stated shares",
    (lat) => {
      let checked = 0;
      for (let day = 15; day <= 350; day += 30) {
        const { rso, noonDeg } = rsoMj(lat, day);
        if (noonDeg < 15) continue;
        const start = new Date(Date.UTC(2026, 0, day));
        const sun = sunTable({ lat, lon: 0 }, start, 5, 288);
        let joules = 0;
        for (let i = 0; i < 288; i++) {
          const h = sun.altitudeDeg[i] as number;
          if (h <= 0) continue;
          const sin = Math.sin(h * RADIAN);
          const factor = earthSunFactor(day, constants);
          const global = clearGlobalWm2(sin, factor, constants);
          const path = airMass(h, 0, constants) ** 0.678;
          const beam = clearBeamWm2(path, factor, Math.log(0.7), constants);
          joules += (beam * sin + clearDiffuseWm2(global, beam, sin, constants)) * 300;
        }
        const share = joules / 1e6 / rso;
        const [low, high] = noonDeg > 40 ? [0.9, 1.03] : [0.75, 1];
        expect(share, `day ${day}, noon ${noonDeg}`).toBeGreaterThan(low);
        expect(share, `day ${day}, noon ${noonDeg}`).toBeLessThan(high);
        checked++;
      }
      expect(checked).toBeGreaterThan(5);
    },
  );
});

describe("worked net radiation", () => {
  const R: RadiationQuestion = {
    sunAltitudeDeg: 24.44,
    sunAzimuthDeg: 142.959,
    slopeDeg: 30,
    aspectDeg: 90,
    horizonDeg: 0,
    elevationM: 700,
    dayOfYear: 325,
    albedo: 0.15,
    cloudShare: 0,
    airTempC: 5,
    relativeHumidity: 0.7,
    transmittance: 0.7,
  };
  const of = (change: Partial<RadiationQuestion>) => netRadiation({ ...R, ...change }, constants);

  test("morning sun on an east slope, clear, half cloud and overcast (tolerance: the last digit)", () => {
    expect(airMass(24.44, 700, constants)).toBeCloseTo(2.2144, 4);
    expect(of({}).beamWm2).toBeCloseTo(757.25, 1);
    expect(of({}).incidence).toBeCloseTo(0.6325, 4);
    expect(of({}).directWm2).toBeCloseTo(478.97, 1);
    const expected: [number, number, number, number][] = [
      [0, 563.54, 73.03, 405.99],
      [0.5, 443.44, 66.02, 310.9],
      [1, 94.22, 3.65, 76.44],
    ];
    for (const [cloudShare, s, l, q] of expected) {
      const ours = of({ cloudShare });
      expect(Math.abs(ours.shortwaveWm2 - s)).toBeLessThan(0.03);
      expect(Math.abs(ours.longwaveLossWm2 - l)).toBeLessThan(0.01);
      expect(Math.abs(ours.netWm2 - q)).toBeLessThan(0.03);
    }
  });

  test("behind the skyline, on the flat, on the far side of the hill", () => {
    expect(of({ horizonDeg: 25 }).netWm2).toBeCloseTo(-1.14, 1);
    const flat = of({ slopeDeg: 0 });
    expect([flat.netWm2, flat.longwaveLossWm2].map((x) => x.toFixed(1))).toEqual(["265.1", "78.3"]);
    expect(flat.incidence).toBeCloseTo(0.4137, 4);
    const west = of({ aspectDeg: 270 });
    expect(Math.abs(west.netWm2 - 53)).toBeLessThan(0.03);
    expect(Math.abs(west.directWm2 - 63.69)).toBeLessThan(0.03);
  });

  test("by night the loss alone is left; a low evening sun warms a west slope", () => {
    expect(of({ sunAltitudeDeg: -5 }).netWm2).toBeCloseTo(-73.03, 1);
    expect(of({ sunAltitudeDeg: -5, cloudShare: 0.5 }).netWm2).toBeCloseTo(-66.02, 1);
    const low = of({ sunAltitudeDeg: 5, sunAzimuthDeg: 240, slopeDeg: 20, aspectDeg: 270 });
    expect(airMass(5, 700, constants)).toBeCloseTo(9.4851, 3);
    expect(Math.abs(low.beamWm2 - 270.88)).toBeLessThan(0.03);
    expect(Math.abs(low.directWm2 - 102.11)).toBeLessThan(0.03);
    expect(Math.abs(low.netWm2 - 32.53)).toBeLessThan(0.03);
  });
});
