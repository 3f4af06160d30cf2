const OWN_SOURCES = /^(?:'none'|'self'|data:|'sha256-[A-Za-z0-9+/=]+')$/;
/** What must be shut or kept to the pack; default-src stands for those not named. */
const NEEDED = ["default-src", "base-uri", "form-action"];

/** Faults of a page's content security policy: none at all, a directive missing, or a source outside the pack. */
export function policyFaults(html: string): string[] {
  const policy = /<meta http-equiv="Content-Security-Policy" content="([^"]*)"/i.exec(html)?.[1];
  if (policy === undefined) return ["has no content security policy"];
  const directives = policy
    .split(";")
    .map((part) => part.trim().split(/\s+/))
    .filter(([name]) => name !== undefined && name !== "");
  const names = directives.map(([name]) => name);
  const before = html.slice(0, html.indexOf("Content-Security-Policy"));
  return [
    ...NEEDED.filter((name) => !names.includes(name)).map((name) => `the policy has no ${name}`),
    ...directives.flatMap(([name, ...sources]) =>
      sources
        .filter((source) => !OWN_SOURCES.test(source))
        .map((source) => `the policy lets ${name} reach ${source}`),
    ),
    ...(/<(?:script|style|link)\b/i.test(before) ? ["the policy stands behind what it should rule"] : []),
  ];
}
