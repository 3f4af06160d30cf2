import type { ComposedPack } from "../composePack.ts";

/** One area ready to be laid out. */
export type AreaPack = ComposedPack;

export type Paper = "A4" | "Letter" | "A5";

export interface PageOptions {
  /** wins over the paper of the areas */
  paper?: Paper;
}

/** A boxed caution: signal word, hazard, what to do. */
export interface CautionBox {
  level: "warning" | "note";
  title: string;
  text: string;
}

export interface PageLink {
  href: string;
  text: string;
}

export interface SheetFoot {
  /** "Page 3 of 22" */
  page: string;
  pack: string;
  edition: string;
  notValidAfter: string;
}

/** What every sheet has, in the order in which it is read. */
export interface Sheet {
  permalink: string;
  /** relative way from this page to the root of the pack, "" or "../../" */
  root: string;
  lang: string;
  paper: "a4" | "letter" | "a5";
  documentTitle: string;
  running: { area: string; page: string; dates: string };
  nav: PageLink[];
  /** the sentence that every page of a demonstration area carries, else null */
  demonstration: string | null;
  title: string;
  /** the answer to the one question of the page: the core is set bold */
  answer: { core: string; rest: string | null };
  exception: string | null;
  cautions: CautionBox[];
  foot: SheetFoot;
}

/** A label and its value; `struck` values are crossed out and followed by `after`. */
export interface FactRow {
  label: string;
  value: string;
  struck: boolean;
  after: string | null;
}

/** A row without a strike. */
export function fact(label: string, value: string, after: string | null = null): FactRow {
  return { label, value, struck: false, after };
}

/** Way back to the root from a page of the output tree. */
export function rootOf(permalink: string): string {
  return "../".repeat(permalink.split("/").length - 1);
}
