import { describe, expect, test } from "vitest";
import { parseProjectionText } from "../../scripts/terrain/parseProjectionText.ts";

// The two texts as ESRI and GDAL write them (from memory of the two dialects, shortened by nothing that is read).
const ESRI =
  'PROJCS["WGS_1984_UTM_Zone_59S",GEOGCS["GCS_WGS_1984",DATUM["D_WGS_1984",SPHEROID["WGS_1984",6378137.0,298.257223563]],PRIMEM["Greenwich",0.0],UNIT["Degree",0.0174532925199433]],PROJECTION["Transverse_Mercator"],PARAMETER["False_Easting",500000.0],PARAMETER["False_Northing",10000000.0],PARAMETER["Central_Meridian",171.0],PARAMETER["Scale_Factor",0.9996],PARAMETER["Latitude_Of_Origin",0.0],UNIT["Meter",1.0]]';
const DEGREES =
  'GEOGCS["GCS_WGS_1984",DATUM["D_WGS_1984",SPHEROID["WGS_1984",6378137,298.257223563]],PRIMEM["Greenwich",0],UNIT["Degree",0.017453292519943295]]';

describe("projection text beside a grid", () => {
  test("UTM is known by its numbers", () => {
    expect(parseProjectionText(ESRI)).toEqual({ kind: "utm", zone: { number: 59, hemisphere: "S" } });
    const north = ESRI.replace("10000000.0", "0.0")
      .replace("171.0", "-87.0")
      .replace("UTM_Zone_59S", "whatever");
    expect(parseProjectionText(north)).toEqual({ kind: "utm", zone: { number: 16, hemisphere: "N" } });
  });

  test("degrees on WGS 84", () => {
    expect(parseProjectionText(DEGREES)).toEqual({ kind: "geographic" });
  });

  test.each([
    ["an old datum", ESRI.replace("D_WGS_1984", "D_North_American_1927")],
    ["another scale", ESRI.replace("0.9996", "0.9999")],
    ["another false easting", ESRI.replace("500000.0", "1600000.0")],
    ["a meridian between zones", ESRI.replace("171.0", "173.0")],
    ["feet", ESRI.replace('UNIT["Meter",1.0]', 'UNIT["Foot_US",0.3048006096012192]')],
    ["another projection", ESRI.replace("Transverse_Mercator", "Lambert_Conformal_Conic")],
    ["degrees on an old datum", DEGREES.replace("D_WGS_1984", "D_European_1950")],
    ["degrees that are grads", DEGREES.replace("0.017453292519943295", "0.015707963267948967")],
    ["another kind of text", "Projection UTM\nZone 13\nDatum NAD27"],
    ["nothing", ""],
  ])("refuses %s", (_what, text) => {
    expect(() => parseProjectionText(text)).toThrow(/terrain-crs/);
  });

  test("refuses by name", () => {
    const text = ESRI.replace("WGS_1984_UTM_Zone_59S", "My_Own_Grid").replace("0.9996", "1.0");
    expect(() => parseProjectionText(text)).toThrow(/My_Own_Grid/);
  });
});
