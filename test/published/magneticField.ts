/**
 * Declination by the World Magnetic Model 2025. 2025.0 and 2027.5 at sea level, and 2025.0 at 100 km: "Test values for
 * WMM2025", NOAA/NCEI and BGS 2025, as quoted in several public test suites; 2027.5 at 100 km: computed with the
 * `geomagnetism` package. 2 July 2027 at noon is 2027.5; the table's date below is 2 July, half a day before, which
 * moves no row by more than 0.001 degrees. Tolerance 0.01 degrees, the last digit printed.
 */
export const PUBLISHED_DECLINATIONS = [
  { id: "WMM-1", localDate: "2025-01-01", heightM: 0, lat: 80, lon: 0, declinationDeg: 1.28 },
  { id: "WMM-2", localDate: "2025-01-01", heightM: 0, lat: 0, lon: 120, declinationDeg: -0.16 },
  { id: "WMM-3", localDate: "2025-01-01", heightM: 0, lat: -80, lon: -120, declinationDeg: 68.78 },
  { id: "WMM-4", localDate: "2025-01-01", heightM: 100_000, lat: 80, lon: 0, declinationDeg: 0.85 },
  { id: "WMM-5", localDate: "2025-01-01", heightM: 100_000, lat: 0, lon: 120, declinationDeg: -0.15 },
  { id: "WMM-6", localDate: "2025-01-01", heightM: 100_000, lat: -80, lon: -120, declinationDeg: 68.21 },
  { id: "WMM-7", localDate: "2027-07-02", heightM: 0, lat: 80, lon: 0, declinationDeg: 2.59 },
  { id: "WMM-8", localDate: "2027-07-02", heightM: 0, lat: 0, lon: 120, declinationDeg: -0.24 },
  { id: "WMM-9", localDate: "2027-07-02", heightM: 0, lat: -80, lon: -120, declinationDeg: 68.49 },
  { id: "WMM-10", localDate: "2027-07-02", heightM: 100_000, lat: 80, lon: 0, declinationDeg: 2.16 },
  { id: "WMM-11", localDate: "2027-07-02", heightM: 100_000, lat: 0, lon: 120, declinationDeg: -0.23 },
  { id: "WMM-12", localDate: "2027-07-02", heightM: 100_000, lat: -80, lon: -120, declinationDeg: 67.93 },
] as const;
