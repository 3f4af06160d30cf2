import type { ModelConstants } from "./modelConstants.ts";

const RADIAN = Math.PI / 180;
/** W/m2 per K4, CODATA 2018. */
const STEFAN_BOLTZMANN = 5.670374e-8;
const FREEZING_K = 273.15;

/** How much stronger than at its mean distance the sun is on a day of the year, 0.967 to 1.033. @source FAO-56 equation 23 */
export function earthSunFactor(dayOfYear: number, constants: ModelConstants): number {
  return 1 + constants.earthSunAmplitude * Math.cos((2 * Math.PI * dayOfYear) / 365);
}

/**
 * Length of the sun's way through the air, 1 for the sun overhead at sea level, about 38 at the horizon.
 *
 * @param altitudeDeg apparent altitude of the sun, over 0 to 90
 * @source Kasten and Young 1989, Applied Optics 28:4735; pressure of an isothermal air column
 */
export function airMass(altitudeDeg: number, elevationM: number, constants: ModelConstants): number {
  const pressureShare = Math.exp(-elevationM / constants.airScaleHeightM);
  return (
    pressureShare /
    (Math.sin(altitudeDeg * RADIAN) + 0.50572 * Math.exp(-1.6364 * Math.log(altitudeDeg + 6.07995)))
  );
}

/**
 * Clear-sky beam across the sun's rays, W/m2.
 *
 * @param path the air mass to the power `airMassExponent`
 * @param logTransmittance natural logarithm of the share that passes one air mass
 * @source Meinel and Meinel 1976
 */
export function clearBeamWm2(
  path: number,
  sunFactor: number,
  logTransmittance: number,
  constants: ModelConstants,
): number {
  return constants.solarConstantWm2 * sunFactor * Math.exp(path * logTransmittance);
}

/** Clear-sky global radiation on the flat, W/m2, 0 with the sun down. @source Haurwitz 1945, times the earth-sun factor */
export function clearGlobalWm2(sinAltitude: number, sunFactor: number, constants: ModelConstants): number {
  if (sinAltitude <= 0) return 0;
  return (
    constants.haurwitzWm2 * sunFactor * sinAltitude * Math.exp(-constants.haurwitzExponent / sinAltitude)
  );
}

/** Clear-sky light from the whole sky on the flat, W/m2: what global leaves over the beam, never under its least share. */
export function clearDiffuseWm2(
  globalWm2: number,
  beamWm2: number,
  sinAltitude: number,
  constants: ModelConstants,
): number {
  return Math.max(globalWm2 - beamWm2 * sinAltitude, constants.diffuseShareMin * globalWm2);
}

/** Cosine of the angle between the sun and a slope's normal, -1 to 1; negative when the slope shades itself. */
export function cosIncidence(
  sunAltitudeDeg: number,
  sunAzimuthDeg: number,
  slopeDeg: number,
  aspectDeg: number,
): number {
  const h = sunAltitudeDeg * RADIAN;
  const s = slopeDeg * RADIAN;
  return (
    Math.cos(s) * Math.sin(h) + Math.sin(s) * Math.cos(h) * Math.cos((sunAzimuthDeg - aspectDeg) * RADIAN)
  );
}

/** Share of clear global radiation that is left under cloud, 0.25 to 1. @source Kasten and Czeplak 1980, Solar Energy 24:177 */
export function cloudGlobalShare(cloudShare: number, constants: ModelConstants): number {
  return 1 - constants.cloudBeamFactor * cloudShare ** constants.cloudBeamExponent;
}

/** Share of the clear-sky heat loss to the sky that is left under cloud. @source FAO-56 equation 39, last bracket, with its floor */
export function cloudCoolingShare(cloudShare: number, constants: ModelConstants): number {
  const bracket = 1.35 * cloudGlobalShare(cloudShare, constants) - 0.35;
  return Math.min(1, Math.max(constants.longwaveCloudMin, bracket));
}

/** Saturation vapour pressure, kPa. @source FAO-56 equation 11 */
export function saturationVapourPressureKpa(airTempC: number): number {
  return 0.6108 * Math.exp((17.27 * airTempC) / (airTempC + 237.3));
}

/** Heat lost to a clear sky by flat ground, W/m2. @source FAO-56 equation 39 in its instantaneous form */
export function clearCoolingWm2(airTempC: number, relativeHumidity: number): number {
  const vapourPressureKpa = relativeHumidity * saturationVapourPressureKpa(airTempC);
  return STEFAN_BOLTZMANN * (airTempC + FREEZING_K) ** 4 * (0.34 - 0.14 * Math.sqrt(vapourPressureKpa));
}

/** Sun, ground and sky of one moment at one place; see `netRadiation`. */
export interface RadiationQuestion {
  /** Apparent altitude; at or under 0 there is no sun. */
  sunAltitudeDeg: number;
  sunAzimuthDeg: number;
  slopeDeg: number;
  aspectDeg: number;
  /** Elevation angle of the skyline below the sun. */
  horizonDeg: number;
  elevationM: number;
  dayOfYear: number;
  albedo: number;
  cloudShare: number;
  airTempC: number;
  relativeHumidity: number;
  transmittance: number;
}

/** All in W/m2; `incidence` is the cosine of incidence. */
export interface NetRadiation {
  incidence: number;
  beamWm2: number;
  /** Beam on the slope under a clear sky, 0 behind the skyline. */
  directWm2: number;
  shortwaveWm2: number;
  longwaveLossWm2: number;
  /** Gain of the ground; negative when it cools. */
  netWm2: number;
}

/**
 * Net radiation of a slope at one moment: sunshine on the slope, sky light, less heat lost to the sky. It leaves out
 * snow, wet ground, light from opposite slopes and warmth from them.
 *
 * @source Meinel 1976, Haurwitz 1945, Kasten and Czeplak 1980, FAO-56 equation 39
 */
export function netRadiation(question: RadiationQuestion, constants: ModelConstants): NetRadiation {
  const q = question;
  const sky = (1 + Math.cos(q.slopeDeg * RADIAN)) / 2;
  const cooling =
    clearCoolingWm2(q.airTempC, q.relativeHumidity) * sky * cloudCoolingShare(q.cloudShare, constants);
  const incidence = cosIncidence(q.sunAltitudeDeg, q.sunAzimuthDeg, q.slopeDeg, q.aspectDeg);
  if (q.sunAltitudeDeg <= 0) {
    return {
      incidence,
      beamWm2: 0,
      directWm2: 0,
      shortwaveWm2: 0,
      longwaveLossWm2: cooling,
      netWm2: -cooling,
    };
  }
  const sinAltitude = Math.sin(q.sunAltitudeDeg * RADIAN);
  const sunFactor = earthSunFactor(q.dayOfYear, constants);
  const path = airMass(q.sunAltitudeDeg, q.elevationM, constants) ** constants.airMassExponent;
  const beamWm2 = clearBeamWm2(path, sunFactor, Math.log(q.transmittance), constants);
  const global = clearGlobalWm2(sinAltitude, sunFactor, constants);
  const diffuse = clearDiffuseWm2(global, beamWm2, sinAltitude, constants);
  const directWm2 = incidence > 0 && q.sunAltitudeDeg >= q.horizonDeg ? beamWm2 * incidence : 0;
  const beamLeft = 1 - q.cloudShare;
  const cloudedGlobal = (beamWm2 * sinAltitude + diffuse) * cloudGlobalShare(q.cloudShare, constants);
  const shortwaveWm2 =
    directWm2 * beamLeft + sky * Math.max(0, cloudedGlobal - beamWm2 * beamLeft * sinAltitude);
  const netWm2 = (1 - q.albedo) * shortwaveWm2 - cooling;
  return { incidence, beamWm2, directWm2, shortwaveWm2, longwaveLossWm2: cooling, netWm2 };
}
