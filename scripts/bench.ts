import { measuredLines } from "./bench/measured.ts";
import { packAgainstEleventy } from "./bench/packAgainstEleventy.ts";
import { terrainBench } from "./bench/terrainBench.ts";
import { yearOfOneSite } from "./bench/yearOfOneSite.ts";

for (const part of [packAgainstEleventy, yearOfOneSite]) {
  for (const measured of await part()) console.log(measuredLines(measured).join("\n"));
}
console.log((await terrainBench()).join("\n"));
