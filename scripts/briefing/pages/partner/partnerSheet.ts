import type { SharedData } from "../../../content/areaContent.ts";
import { decimalDegreesText } from "../../../geo/coordinateText.ts";
import { dateSpanText, dateText, weekdayName } from "../../words/dateText.ts";
import { listWords } from "../../words/listWords.ts";
import { type AreaFrame, areaSheetBase } from "../areaFrame.ts";
import { packDay } from "../dayLight.ts";
import { legalSource, legalText } from "../legalText.ts";
import { type PenRow, penRow } from "../penRow.ts";
import { cautionText } from "../safety/cautionGroups.ts";
import { type AreaPack, type FactRow, fact, type PageLink, type Sheet } from "../sheetParts.ts";
import { type PackedTrip, tripPermalinks } from "../trips/packedTrips.ts";
import { type NewcomerSite, newcomerSites } from "./newcomerSites.ts";

/** A part of the briefing: rules as a list, then what the area adds. */
export interface PartnerPart {
  title: string;
  rules: string[];
}

/** What must a newcomer know first? Five parts in the order of what can kill. */
export interface PartnerSheet extends Sheet {
  shooting: PartnerPart & { blocks: string | null; strips: string | null };
  tied: PartnerPart & { carry: string };
  ground: PartnerPart & { bases: FactRow[]; hazards: FactRow[]; help: PenRow[] };
  times: PartnerPart & {
    legal: string;
    trips: { name: string; checkIn: string | null; links: PageLink[] }[];
  };
  air: PartnerPart & {
    fits: { href: string; name: string; walk: string; platform: string }[];
    others: string[];
    words: FactRow[];
  };
  refuse: string;
  askMe: string[];
  emergency: PageLink;
}

export function partnerSheet(
  frame: AreaFrame,
  packed: readonly PackedTrip[],
  shared: SharedData,
): PartnerSheet {
  const { area } = frame;
  const { cautions } = shared;
  const text = (id: string): string => cautionText(cautions, id);
  const sites = newcomerSites(area, shared);
  return {
    ...areaSheetBase(frame, {
      permalink: `${frame.folder}partner.html`,
      pageName: "Partner briefing",
      title: "Partner briefing",
      answer: {
        core: "We want everybody home by the agreed time, and no shot that somebody doubts.",
        rest: null,
      },
      exception: "Read this in 5 minutes, then say the plan back.",
      cautions: [],
    }),
    shooting: {
      title: "1. How we do not shoot each other",
      rules: [
        text("W3"),
        text("W5"),
        text("W2"),
        "Stay in your block, also on the way home.",
        "Out of touch with your partner means no shooting.",
        "No shot towards or over a shared line, ridge or creek.",
        "Meeting: stop, unload, then walk up.",
      ],
      blocks: namesOf(area.content.facts.blocks),
      strips: stripNames(area),
    },
    tied: {
      title: "2. Tied on, and what you carry",
      rules: [
        text("F1"),
        text("F3"),
        "Try it on the ground, then at knee height, then higher, with a helper beside you.",
      ],
      carry: "On the body: harness, phone, whistle, knife, lamp and spare, this pack's last sheet.",
    },
    ground: {
      title: "3. Where you are, the way out, whom to call",
      rules: ["Know your site number, and where the emergency sheet is, before you leave camp."],
      bases: [...area.content.facts.camps, ...area.content.facts.parkings].map((place) =>
        fact(place.name, decimalDegreesText(place.position)),
      ),
      hazards: area.content.facts.hazards.map((hazard) =>
        fact(hazard.name, `${hazard.where}. ${hazard.advice}`),
      ),
      help: [
        penRow("Number to call", area.content.facts.emergency.number),
        penRow("Phone works", area.content.facts.emergency.coverage),
        penRow("Radio", area.content.facts.emergency.radio),
      ],
    },
    times: {
      title: "4. Times, and who decides",
      rules: [
        "Six times stand on the day sheet: leave, settled, legal, start down, back, overdue.",
        "No answer at the agreed check: go to that tree first.",
        "Change nothing without word: not the site, not the way home.",
        "The landholder's word is final. The shooter decides each shot, every time.",
      ],
      legal: legalLine(area),
      trips: packed.map((trip) => tripLinks(frame, trip)),
    },
    air: {
      title: "5. Wind, and only then the deer",
      rules: [
        "Wind is named by where it comes from. Drift is where your scent goes.",
        "By night cold air falls downhill. After sun reaches the slope it turns, then rises.",
        "The turn takes its time: the page gives a span, cloud and wind shift it.",
        "Air to the deer for more than some minutes: leave quietly.",
      ],
      fits: sites
        .filter((site) => site.against.length === 0)
        .map((entry) => ({
          href: `sites/${entry.site.id}.html`,
          name: `${entry.site.number} ${entry.site.name}`,
          walk: entry.walk,
          platform: entry.platform,
        })),
      others: sites.filter((site) => site.against.length > 0).map(otherSite),
      words: [
        fact("Settled", "in the seat, tied in, still"),
        fact("First light", "the sun 6 degrees below the horizon; no promise that you see enough"),
        fact("Backstop", "earth behind the animal that stops a bullet"),
        fact("No-shoot bearing", "a direction with people, road or building, or no backstop"),
      ],
    },
    refuse: "You may refuse three things without a reason: the height, the walk in the dark, the shot.",
    askMe: [
      "Does the harness fit over what you wear?",
      "Where is everybody, and which way may you not fire?",
      "When do you come down, and who waits for word?",
    ],
    emergency: { href: "emergency.html", text: "Emergency page, the last sheet" },
  };
}

function otherSite({ site, against }: NewcomerSite): string {
  return `${site.number} ${site.name}: ${listWords(against)}.`;
}

function namesOf(blocks: readonly { name: string }[]): string | null {
  return blocks.length === 0 ? null : listWords(blocks.map((block) => block.name));
}

function stripNames(area: AreaPack): string | null {
  const strips = (area.content.map?.features ?? []).filter((f) => f.properties.kind === "no-fire-strip");
  return strips.length === 0
    ? null
    : listWords(strips.map((strip) => strip.properties.name ?? "one marked on the map"));
}

function legalLine(area: AreaPack): string {
  const { tableDate, area: pack } = area.pack;
  const day = packDay(area, tableDate);
  if (day === undefined) return "LEGAL HOURS NOT CONFIRMED.";
  const { window, mark } = legalText(day.shootingLight, pack.timezone);
  const words = mark === null ? window : `${window}, ${mark}`;
  return `On ${dateText(tableDate, pack.locale)}: ${words}. ${legalSource(day.shootingLight, area)}`;
}

function tripLinks(
  frame: AreaFrame,
  { trip, written }: PackedTrip,
): { name: string; checkIn: string | null; links: PageLink[] } {
  const { locale } = frame.area.pack.area;
  const { days, intentions } = tripPermalinks(frame.folder, trip);
  const inArea = (permalink: string): string => permalink.slice(frame.folder.length);
  return {
    name: `${written.facts.name}, ${dateSpanText(trip.from, trip.to, locale)}`,
    checkIn: written.facts.checkIn ?? null,
    links: [
      ...trip.days.map((day, i) => ({
        href: inArea(days[i]!),
        text: `${weekdayName(day.localDate).slice(0, 3)} ${dateText(day.localDate, locale)}`,
      })),
      { href: inArea(intentions), text: "Trip intentions" },
    ],
  };
}
