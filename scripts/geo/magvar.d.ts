declare module "magvar" {
  /** The World Magnetic Model 2025; heights in kilometres above mean sea level, x north and y east in nanotesla. */
  const magvar: {
    calculateMagneticField(
      decimalYear: number,
      latitude: number,
      longitude: number,
      altitudeKm?: number,
    ): { declination: number; inclination: number; x: number; y: number; z: number; h: number; f: number };
    MODEL_EPOCH: number;
    MODEL_VALID_UNTIL: number;
  };
  export default magvar;
}
