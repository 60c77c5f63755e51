import type { FractionStep } from '../../generated';

/** A mark of a tape between two inches; `null` as its fraction is the even inch. */
export type FractionKey = { eighths: number; fraction: string | null };

const EIGHTHS: readonly FractionKey[] = [null, '1/8', '1/4', '3/8', '1/2', '5/8', '3/4', '7/8'].map(
  (fraction, eighths) => ({ eighths, fraction }),
);

/** Returns the marks of a tape with the given finest fraction, from the even inch up. */
export function fractionKeys(finest: FractionStep): FractionKey[] {
  return EIGHTHS.filter(({ eighths }) => finest === 'eighths' || eighths % 2 === 0);
}
