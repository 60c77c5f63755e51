/** A fraction key. */
export type Eighths = { eighths: number; name: string };

/** The marks of a tape between two inches, as they are named on the keys. */
export const EIGHTHS: readonly Eighths[] = [
  'even',
  '1/8',
  '1/4',
  '3/8',
  '1/2',
  '5/8',
  '3/4',
  '7/8',
].map((name, eighths) => ({ eighths, name }));
