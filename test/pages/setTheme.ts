import type { Page } from "../browser.ts";

export const THEMES = ["day", "dim", "red"] as const;

/**
 * Turns the page to a theme as a reader does: dim follows the wish of the device, red is chosen by the switch of the page.
 *
 * @returns false when the page has no switch to the theme
 */
export async function setTheme(page: Page, theme: (typeof THEMES)[number]): Promise<boolean> {
  await page.emulateMedia({ colorScheme: theme === "day" ? "light" : "dark" });
  const choice = theme === "red" ? "red" : "auto";
  return (await page.evaluate(`(() => {
    const all = [...document.querySelectorAll('input[type="radio"][name="theme"]')];
    const wanted = all.find((one) => one.value === ${JSON.stringify(choice)} || one.id === "theme-" + ${JSON.stringify(choice)});
    if (wanted) wanted.checked = true;
    else if (${theme !== "red"}) for (const one of all) one.checked = one.defaultChecked;
    return wanted !== undefined || ${theme !== "red"};
  })()`)) as boolean;
}
