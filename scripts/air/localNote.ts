import type { CompassPoint } from "../geo/compassPoints.ts";
import type { Phase, Verdict, WindClass } from "./slopeSite.ts";

/** What somebody saw at a site; it outranks the model for the cells it names. A null key names all. */
export interface LocalNote {
  session: string | null;
  phase: Phase | null;
  windFrom: CompassPoint | "calm" | null;
  class: WindClass | null;
  verdict: Verdict | null;
  /** The instant, on the day that is computed, at which the air turns by this note. */
  turnsAt: Date | null;
  note: string;
  /** Civil day, YYYY-MM-DD. */
  seenOn: string;
}

/** A cell of a table, or a moment of a session. */
export interface NoteCell {
  session: string;
  /** Null: notes that name a phase do not count. */
  phase: Phase | null;
  windFrom: CompassPoint | "calm";
  class: WindClass;
}

/** The note whose verdict the cell takes: the one that names most keys, then the newest; null when none does. */
export function verdictNote(notes: readonly LocalNote[], cell: NoteCell): LocalNote | null {
  return best(notes.filter((note) => note.verdict !== null && isNamed(note, cell)));
}

/** The note that moves the turn of a session for a wind; null when none does. */
export function turnNote(notes: readonly LocalNote[], cell: Omit<NoteCell, "phase">): LocalNote | null {
  return best(
    notes.filter(
      (note) => note.turnsAt !== null && isNamed({ ...note, phase: null }, { ...cell, phase: null }),
    ),
  );
}

function isNamed(note: LocalNote, cell: NoteCell): boolean {
  return (
    (note.session === null || note.session === cell.session) &&
    (note.phase === null || note.phase === cell.phase) &&
    (note.windFrom === null || note.windFrom === cell.windFrom) &&
    (note.class === null || note.class === cell.class)
  );
}

function best(notes: readonly LocalNote[]): LocalNote | null {
  let found: LocalNote | null = null;
  for (const note of notes) {
    if (!found || isStronger(note, found)) found = note;
  }
  return found;
}

function isStronger(note: LocalNote, than: LocalNote): boolean {
  const more = keysNamed(note) - keysNamed(than);
  return more > 0 || (more === 0 && note.seenOn > than.seenOn);
}

function keysNamed(note: LocalNote): number {
  return [note.session, note.phase, note.windFrom, note.class].filter((key) => key !== null).length;
}
