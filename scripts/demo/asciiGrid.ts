import type { PostLattice } from "./groundPlan.ts";
import type { BoxCorner } from "./localFrame.ts";

const NO_DATA = -9999;

/** An ESRI ASCII grid of heights to 0.1 m; NaN is written as the declared no-data number. The corner keys name post centres. */
export function asciiGrid(heightsM: Float64Array, lattice: PostLattice, corner: BoxCorner): string {
  const southY = lattice.northY - (lattice.rows - 1) * lattice.spacingM;
  const head = [
    `ncols ${lattice.columns}`,
    `nrows ${lattice.rows}`,
    `xllcenter ${corner.eastingM + lattice.westX}`,
    `yllcenter ${corner.northingM + southY}`,
    `cellsize ${lattice.spacingM}`,
    `NODATA_value ${NO_DATA}`,
  ];
  const rows = Array.from({ length: lattice.rows }, (_, row) =>
    Array.from(heightsM.subarray(row * lattice.columns, (row + 1) * lattice.columns), heightText).join(" "),
  );
  return `${[...head, ...rows].join("\n")}\n`;
}

function heightText(heightM: number): string {
  return Number.isNaN(heightM) ? String(NO_DATA) : String(Number(heightM.toFixed(1)));
}

/** The projection of a UTM zone on WGS 84 as well-known text, for the .prj file beside a grid. */
export function projectionText({ zone }: BoxCorner): string {
  return `PROJCS["WGS_1984_UTM_Zone_${zone.number}${zone.hemisphere}",GEOGCS["GCS_WGS_1984",DATUM["D_WGS_1984",SPHEROID["WGS_1984",6378137.0,298.257223563]],PRIMEM["Greenwich",0.0],UNIT["Degree",0.0174532925199433]],PROJECTION["Transverse_Mercator"],PARAMETER["False_Easting",500000.0],PARAMETER["False_Northing",${zone.hemisphere === "S" ? "10000000.0" : "0.0"}],PARAMETER["Central_Meridian",${zone.number * 6 - 183}.0],PARAMETER["Scale_Factor",0.9996],PARAMETER["Latitude_Of_Origin",0.0],UNIT["Meter",1.0]]\n`;
}
