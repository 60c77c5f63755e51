// Which cautions were shown in full today on this device: each once a day, then as one line.
const KEY = 'cautions';

type Shown = { day: string; codes: string[] };

/** The part of the browser's storage that is used here. */
export type Store = Pick<Storage, 'getItem' | 'setItem'>;

function shownToday(day: string, store: () => Store): Shown {
  try {
    const kept = JSON.parse(store().getItem(KEY) ?? '') as Shown;
    if (kept.day === day) return kept;
  } catch {
    // Nothing is kept, or the browser forbids storage: the caution is due in full again.
  }
  return { day, codes: [] };
}

/** Whether a caution is due in full now. Records that it was shown today. */
export function firstToday(
  code: string,
  now: Date = new Date(),
  store: () => Store = () => localStorage,
): boolean {
  const kept = shownToday(now.toDateString(), store);
  if (kept.codes.includes(code)) return false;
  try {
    store().setItem(KEY, JSON.stringify({ ...kept, codes: [...kept.codes, code] }));
  } catch {
    // The browser forbids storage.
  }
  return true;
}
