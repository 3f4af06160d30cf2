import type { CameraFile } from "../content/schema/cameraSchema.ts";
import { addDays } from "../time/civilTime.ts";
import type { LocalFrame } from "./localFrame.ts";

/** One trail camera. `visits` is "05:2 06:6": true local hour and number of visits over the period, or "2027-10-03T18:12" each. */
export interface DemoCamera {
  id: string;
  name: string;
  site: string;
  at: string;
  from: string;
  days: number;
  visits: string;
  species: string;
  /** classes in turn, visit by visit */
  classes: string[];
  /** animals in turn, visit by visit */
  counts?: number[];
  /** minutes to add to the camera's clock to get the true time */
  clockOffsetMin: number;
  notes?: string;
}

/** The camera's file and its table. */
export function cameraFiles(
  camera: DemoCamera,
  timezone: string,
  frame: LocalFrame,
): { facts: CameraFile; table: string } {
  const { classes, counts = [1] } = camera;
  const rows = visitTimes(camera).map((at, index) => {
    const shown = clockOf(at, -camera.clockOffsetMin);
    return `${shown},${camera.species},${classes[index % classes.length]},${counts[index % counts.length]},`;
  });
  return {
    facts: {
      name: camera.name,
      position: frame.place(camera.at),
      site: camera.site,
      timezone,
      clockOffsetMin: camera.clockOffsetMin,
      ...(camera.notes ? { notes: camera.notes } : {}),
    },
    table: `${["at,species,class,count,direction", ...rows].join("\n")}\n`,
  };
}

/** True local times in order. Visit k of n in hour h falls on day (7k + 3h) mod days, at minute 60(k + 1/2)/n. */
function visitTimes({ visits, from, days }: DemoCamera): string[] {
  const words = visits.split(/\s+/);
  if (words[0]?.includes("T")) return words.map((word) => `${word}:00`).sort();
  return words
    .flatMap((word) => {
      const [hour = 0, count = 0] = word.split(":").map(Number);
      return Array.from({ length: count }, (_, k) => {
        const day = addDays(from, (7 * k + 3 * hour) % days);
        return `${day}T${twoDigits(hour)}:${twoDigits(Math.floor((60 * (k + 0.5)) / count))}:00`;
      });
    })
    .sort();
}

function clockOf(local: string, shiftMin: number): string {
  return new Date(Date.parse(`${local}Z`) + shiftMin * 60_000).toISOString().slice(0, 19);
}

function twoDigits(value: number): string {
  return String(value).padStart(2, "0");
}
