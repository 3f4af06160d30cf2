import type { CompassPoint } from "../geo/compassPoints.ts";
import { type SessionVerdict, sessionVerdict } from "./sessionVerdict.ts";
import type { WindClass } from "./slopeSite.ts";
import { tableWinds } from "./tableWinds.ts";
import type { TableQuestion } from "./windTableRows.ts";

export interface SessionTableRow extends Omit<SessionVerdict, "steps"> {
  windFrom: CompassPoint | "calm";
  class: WindClass;
  session: string;
}

/** The session table of a site: for each of the 33 table winds the verdict of every session, under a steady wind. */
export function sessionTableRows(
  question: TableQuestion & { clockText: (at: Date) => string },
): SessionTableRow[] {
  const { site, air, airWhy, localNotes, clockText, constants } = question;
  return tableWinds(constants).flatMap(({ windFrom, class: ofClass, wind }) =>
    question.sessions.map((window): SessionTableRow => {
      const { approaches, session } = window;
      const tableCell = { windFrom, class: ofClass };
      const { steps: _, ...verdict } = sessionVerdict({
        ...{ site, air, airWhy, window, approaches, wind, tableCell, localNotes, clockText, constants },
      });
      return { windFrom, class: ofClass, session, ...verdict };
    }),
  );
}
