export type Cover = "open" | "edge" | "timber" | "dense timber";
export type Phase = "falling" | "turning" | "rising";
export type Landform = "slope" | "crest" | "floor" | "flat";
export type WindClass = "calm" | "light" | "fresh";
export type Verdict = "suits" | "marginal" | "avoid" | "not assessed";

/** The four covers in the order of every row of four constants, most open first. */
export const COVERS: readonly Cover[] = ["open", "edge", "timber", "dense timber"];

/**
 * What the air needs to know of one site; all bearings true. The slope and the way it faces are those of the broad
 * hillside (about 150 m around), not of the spot itself.
 */
export interface SlopeSite {
  /** 0 (flat) to 90; null when it is not known: then there is no slope air to compute. */
  slopeDeg: number | null;
  /** The way the hillside faces (downhill); null on flat ground or when not known. */
  aspectDeg: number | null;
  landform: Landform;
  cover: Cover;
  elevationM: number;
  /** Elevation angle of the skyline at the 360 whole bearings, from 2 m over the ground; null is a flat horizon. */
  horizonDeg: ArrayLike<number> | null;
  /** Valley floors: bearing of the first 300 m of the cold-air path; null when it is not known. */
  floorDriftToDeg: number | null;
  /** Greatest upwind slope for winds from N, NNE ... NNW (16); positive is sheltered; null is open on all sides. */
  sxDeg: ArrayLike<number> | null;
}

/** Sun positions at even steps: apparent altitude (with refraction) and azimuth clockwise from true north. */
export interface SunTable {
  startsAt: Date;
  stepMin: number;
  altitudeDeg: Float64Array;
  azimuthDeg: Float64Array;
}

/** Sky and air of one stretch of time. Null temperature or humidity: the model's own assumption is used. */
export interface AirWeather {
  /** 0 (clear) to 1 (overcast). */
  cloudShare: number;
  airTempC: number | null;
  /** 0 to 1. */
  relativeHumidity: number | null;
}

/** A row of a forecast; it holds until the next row begins. The first row also holds before itself. */
export interface WeatherRow extends AirWeather {
  at: Date;
}

export const CLEAR_SKY: AirWeather = { cloudShare: 0, airTempC: null, relativeHumidity: null };
