import type { SharedData } from "../../../content/areaContent.ts";
import { type AreaFrame, areaSheetBase } from "../areaFrame.ts";
import { type PermissionRow, permissionRows } from "../permissionRows.ts";
import { ruleRows, type SourcedRow } from "../ruleRows.ts";
import type { PageLink, Sheet } from "../sheetParts.ts";
import { standingLine } from "../standingLines.ts";
import { type CautionGroup, cautionGroups } from "./cautionGroups.ts";
import { CHECKLISTS, type Checklist } from "./checklists.ts";
import { type HarnessRow, harnessRows } from "./harnessRows.ts";

/** Am I fit to climb? */
export interface SafetySheet extends Sheet {
  tiedOn: string;
  checklists: readonly Checklist[];
  harness: HarnessRow[];
  rules: SourcedRow[];
  /** permissions with their reference in the owner edition, else without */
  permits: (PermissionRow & { reference: string | null })[];
  groups: CautionGroup[];
  certifies: string;
  emergency: PageLink;
}

export function safetySheet(frame: AreaFrame, shared: SharedData): SafetySheet {
  const { area } = frame;
  const references = area.content.facts.permission.map((permission) => permission.reference ?? null);
  return {
    ...areaSheetBase(frame, {
      permalink: `${frame.folder}safety.html`,
      pageName: "Safety and checklists",
      title: "Safety and checklists",
      answer: {
        core: "Do not climb without a full-body harness, with thunder or ice about, or up a tree with a fault.",
        rest: null,
      },
      exception: "Unwell, short of sleep or not sober: hunt from the ground.",
      cautions: [],
    }),
    tiedOn: standingLine(shared, "tiedOn"),
    checklists: CHECKLISTS,
    harness: harnessRows(area),
    rules: ruleRows(area).filter((row) => ["Following up", "Bright colour", "Stands"].includes(row.label)),
    permits: permissionRows(area).map((row, i) => ({
      ...row,
      reference: area.pack.edition === "owner" ? (references[i] ?? null) : null,
    })),
    groups: cautionGroups(shared.cautions),
    certifies: standingLine(shared, "doesNotCertify"),
    emergency: { href: "emergency.html", text: "Emergency page, the last sheet" },
  };
}
