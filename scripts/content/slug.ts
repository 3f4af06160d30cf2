/**
 * Id made of free text: small letters without accents, digits, single hyphens, at most 40 characters. Null when nothing
 * of the text can stand in an id.
 *
 * @example slug("Zwölfer Höhe (North)") // "zwolfer-hohe-north"
 */
export function slug(text: string): string | null {
  const id = text
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/['’]/g, "")
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+/, "")
    .slice(0, 40)
    .replace(/-+$/, "");
  return id === "" ? null : id;
}
