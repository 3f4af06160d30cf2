// The colours that custom properties of the page stand for now, by name; empty when there is none of the name.
(names) => {
  const probe = document.createElement("span");
  document.body.append(probe);
  const style = getComputedStyle(document.body);
  const found = names.map((name) => {
    if (style.getPropertyValue(`--${name}`).trim() === "") return [name, ""];
    probe.style.color = `var(--${name})`;
    return [name, getComputedStyle(probe).color];
  });
  probe.remove();
  return Object.fromEntries(found);
};
