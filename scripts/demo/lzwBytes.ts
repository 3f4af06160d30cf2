const CLEAR = 256;
const END = 257;
const FIRST_FREE = 258;
const CODES_MAX = 4094; // the table is cleared before a code of 13 bits would be needed

/**
 * Bytes packed by the LZW of TIFF: codes of 9 to 12 bits, highest bit first, one code wider one code early. Written here
 * because a packer of the platform may give other bytes on another machine.
 *
 * @source TIFF Revision 6.0 (1992), section 13
 */
export function lzwBytes(bytes: Uint8Array): Uint8Array {
  const out: number[] = [];
  let held = 0;
  let heldBits = 0;
  let width = 9;
  const put = (code: number): void => {
    held = (held << width) | code;
    heldBits += width;
    while (heldBits >= 8) {
      heldBits -= 8;
      out.push((held >>> heldBits) & 255);
    }
    held &= (1 << heldBits) - 1;
  };

  const table = new Map<number, number>(); // prefix code and next byte, as one number, to their code
  let next = FIRST_FREE;
  put(CLEAR);
  let prefix = -1;
  for (const byte of bytes) {
    if (prefix < 0) {
      prefix = byte;
      continue;
    }
    const key = prefix * 256 + byte;
    const known = table.get(key);
    if (known !== undefined) {
      prefix = known;
      continue;
    }
    put(prefix);
    table.set(key, next++);
    if (next > CODES_MAX) {
      put(CLEAR);
      table.clear();
      next = FIRST_FREE;
      width = 9;
    } else if (next > (1 << width) - 1) {
      width++;
    }
    prefix = byte;
  }
  if (prefix >= 0) {
    put(prefix);
    next++;
    if (next > (1 << width) - 1 && width < 12) width++;
  }
  put(END);
  if (heldBits > 0) out.push((held << (8 - heldBits)) & 255);
  return Uint8Array.from(out);
}
