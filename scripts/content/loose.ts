/**
 * A file as far as it could be read: every value that broke a rule is undefined, all else is as checked. Places in lists
 * are kept. Checks across files work on this, so one bad field does not hide the problems of another file.
 */
export type Loose<T> = T extends readonly (infer Item)[]
  ? number extends T["length"]
    ? (Loose<Item> | undefined)[]
    : { [Index in keyof T]?: Loose<T[Index]> }
  : T extends object
    ? { [Key in keyof T]?: Loose<T[Key]> | undefined }
    : T;
