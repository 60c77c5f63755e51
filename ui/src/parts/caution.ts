// Which cautions were shown in full today on this device: each once a day, then as one line.
const KEY = 'cautions';

type Shown = { day: string; codes: string[] };

const today = () => new Date().toDateString();

function shown(): Shown {
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? '') as Shown;
    if (kept.day === today()) return kept;
  } catch {
    // Nothing kept, or nothing may be kept: it is shown in full again.
  }
  return { day: today(), codes: [] };
}

/** Whether a caution is to be shown in full now; from then on today it is not. */
export function firstToday(code: string): boolean {
  const kept = shown();
  if (kept.codes.includes(code)) return false;
  try {
    localStorage.setItem(KEY, JSON.stringify({ ...kept, codes: [...kept.codes, code] }));
  } catch {
    // As above.
  }
  return true;
}
