/** Says how far a step is: parts done of all parts, and what is done now. */
export type Tick = (done: number, total: number, now: string) => Promise<void>;

/** Shows long work: what, how far, how long. */
export interface Progress {
  step<T>(what: string, work: (tick: Tick) => T | Promise<T>): Promise<T>;
}

export interface ProgressScreen {
  isTTY?: boolean;
  columns?: number;
  write(text: string): unknown;
}

const CLEAR_LINE = "\r\u001b[K";
/** silence in plain output before a step says how far it is, milliseconds */
const PLAIN_AFTER_MS = 5000;

/**
 * Progress on a screen. On a terminal one line is written over and over while a step runs; elsewhere only whole lines are
 * written, one when a step is done and one each five seconds in between.
 *
 * @param nowMs a clock that never runs backwards, milliseconds
 */
export function createProgress(screen: ProgressScreen, nowMs: () => number): Progress {
  return {
    async step(what, work) {
      const startedMs = nowMs();
      let saidMs = startedMs;
      let parts = "";
      const seconds = () => `${((nowMs() - startedMs) / 1000).toFixed(1)} s`;
      const show = (text: string) => screen.write(CLEAR_LINE + text.slice(0, (screen.columns ?? 80) - 1));
      if (screen.isTTY) show(`${what} ...`);
      const tick: Tick = async (done, total, now) => {
        parts = `, ${done} of ${total}`;
        const state = `${what}${parts}${now === "" ? "" : ` (${now})`}, ${seconds()}`;
        if (screen.isTTY) show(state);
        else if (nowMs() - saidMs >= PLAIN_AFTER_MS) {
          saidMs = nowMs();
          screen.write(`${state} so far\n`);
        }
        // lets the screen and signals have their turn between two long computations
        await new Promise((resolve) => setImmediate(resolve));
      };
      let result: Awaited<ReturnType<typeof work>>;
      try {
        result = await work(tick);
      } catch (error) {
        if (screen.isTTY) screen.write(CLEAR_LINE);
        throw error;
      }
      screen.write(`${screen.isTTY ? CLEAR_LINE : ""}${what}${parts}, ${seconds()}\n`);
      return result;
    },
  };
}

/** Shows nothing. */
export const silentProgress: Progress = {
  async step(_what, work) {
    return await work(async () => undefined);
  },
};
