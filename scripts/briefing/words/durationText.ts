/** Minutes as "45 min", "1 h", "11 h 21 min"; rounded to whole minutes. */
export function durationText(minutes: number): string {
  if (!Number.isFinite(minutes) || minutes < 0) {
    throw new RangeError(`minutes must be 0 or more, found ${minutes}`);
  }
  const whole = Math.round(minutes);
  const hours = Math.floor(whole / 60);
  if (hours === 0) return `${whole} min`;
  return whole % 60 === 0 ? `${hours} h` : `${hours} h ${whole % 60} min`;
}

/** Hours and minutes for a column of figures: "11:21". */
export function hoursMinutesText(minutes: number): string {
  const whole = Math.round(minutes);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, "0")}`;
}

/** An estimated span of minutes, outward to 5: [33, 51] gives "about 30 to 55 min". */
export function aboutMinutesText(minutes: readonly [number, number]): string {
  const low = Math.floor(minutes[0] / 5) * 5;
  const high = Math.ceil(minutes[1] / 5) * 5;
  if (low === high) return `about ${durationText(high)}`;
  return high < 90 ? `about ${low} to ${high} min` : `about ${durationText(low)} to ${durationText(high)}`;
}
