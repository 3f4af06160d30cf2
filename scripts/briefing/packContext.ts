import type { ModelConstants } from "../air/modelConstants.ts";
import type { SharedData, TripContent } from "../content/areaContent.ts";
import type { SessionWindow } from "../light/sessionWindows.ts";
import type { SunAnchorsOf } from "../light/sunAnchors.ts";
import type { ForecastHour } from "./forecastSeries.ts";
import type { LoadedArea } from "./loadedArea.ts";
import type { MapShape } from "./mapShapes.ts";
import type { SunTableOf } from "./sunTables.ts";

/** What every part of one area's pack is computed from. */
export interface PackContext {
  area: LoadedArea;
  shared: SharedData;
  constants: ModelConstants;
  trips: TripContent[];
  shapes: MapShape[];
  timezone: string;
  year: number;
  asOf: Date;
  asOfDate: string;
  tableDate: string;
  phaseDates: string[];
  sunOf: SunAnchorsOf;
  sunTableOf: SunTableOf;
  /** sessions of the area on the table date, at its centre */
  sessions: SessionWindow[];
  /** forecast of the first trip that has one for the day; empty without one */
  forecastOf: (localDate: string) => ForecastHour[];
}
