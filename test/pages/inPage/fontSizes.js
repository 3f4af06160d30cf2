// Texts set smaller than their role allows, points. Roles are selectors; the first that fits counts.
(roles) => {
  const faults = new Map();
  for (const element of seenTexts()) {
    const drawn = element.closest("svg");
    const scale = drawn ? Math.abs(element.getScreenCTM().a) : 1;
    const sizePt = Number.parseFloat(getComputedStyle(element).fontSize) * scale * 0.75;
    const role = roles.find(({ selector }) => element.closest(selector));
    if (role === undefined || sizePt >= role.leastPt - 0.02) continue;
    const size = sizePt.toFixed(1).replace(/\.0$/, "");
    const fault = `${role.name} of ${size} pt instead of ${role.leastPt}`;
    if (!faults.has(fault)) faults.set(fault, nameOf(element));
  }
  return [...faults].map(([fault, where]) => `${fault}: ${where}`);
};
