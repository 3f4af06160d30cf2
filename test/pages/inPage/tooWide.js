// What makes a page wider than its screen, and boxes that scroll sideways though they need not.
(mayScroll) => {
  const faults = [];
  const width = document.documentElement.clientWidth;
  const asWide = document.documentElement.scrollWidth;
  if (asWide > width) faults.push(`is ${asWide} px wide on ${width} px`);
  const reach = (element) => (isSeen(element) ? element.getBoundingClientRect().right : 0);
  for (const element of document.querySelectorAll("body *")) {
    const parent = element.parentElement;
    if (parent.closest("[data-scroll], svg") !== null) continue;
    if (reach(element) > width + 0.5 && reach(parent) <= width + 0.5)
      faults.push(`reaches ${Math.ceil(reach(element))} px on ${width} px: ${nameOf(element)}`);
  }
  for (const box of document.querySelectorAll("[data-scroll]")) {
    if (isSeen(box) && box.scrollWidth > box.clientWidth + 1 && !box.matches(mayScroll))
      faults.push(`scrolls ${box.scrollWidth} px sideways in ${box.clientWidth} px: ${nameOf(box)}`);
  }
  return faults;
};
