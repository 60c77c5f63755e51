// What comes over the boundary is told in English: another language finds its own by the sentence.

/** Sentences and labels by their English ones, `{}` for what changes in them. */
export type Catalogue = Record<string, string>;

/**
 * Tells a text by a catalogue: whole, by its parts, or, where nothing is known of it, as it came.
 * Lengths keep their figures and change their units.
 */
export function teller(
  catalogue: Catalogue,
  units: Catalogue,
  and: string,
): (text: string) => string {
  const patterns = Object.entries(catalogue)
    .filter(([en]) => PLACE.test(en))
    .map(([en, own]) => ({ finds: pattern(en), own }));
  const known = (text: string): string | null => {
    const whole = catalogue[text];
    if (whole !== undefined) return whole;
    for (const { finds, own } of patterns) {
      const found = finds.exec(text);
      if (!found) continue;
      let part = 0;
      return own.replace(/\{\}/g, () => tell(found[(part += 1)] ?? ''));
    }
    return null;
  };
  const tell = (text: string): string => {
    const told = known(text);
    if (told !== null) return told;
    if (LENGTH.test(text)) return text.replace(/sq ft|[a-z]+/g, (unit) => units[unit] ?? unit);
    const lower = text.charAt(0).toLowerCase() + text.slice(1);
    const small = lower === text ? null : known(lower);
    if (small !== null) return small.charAt(0).toUpperCase() + small.slice(1);
    // Two names with an "and" between them, where both are known.
    const two = text.split(' and ');
    const both = two.length === 2 ? two.map(tell) : [];
    if (both.length === 2 && both.every((part, i) => part !== two[i])) return both.join(and);
    for (const between of [/(?<=[.?]) /, /, /]) {
      const parts = text.split(between);
      if (parts.length > 1) return parts.map(tell).join(between.source === ', ' ? ', ' : ' ');
    }
    return text;
  };
  return tell;
}

// `42 ft 7 1/2 in`, `2,013 sq ft`, `± 2 in`.
const LENGTH = /^(± )?[\d,./ ]+(ft|in|sq ft|m|cm)( [\d/ ]+in)?$/;

// Where something changes: any text, or one that begins with a digit. "Ridge vent" is not ridge 1.
const PLACE = /\{#?\}/;

function pattern(en: string): RegExp {
  const parts = en.split(/(\{#?\})/).map((part) => {
    if (part === '{}') return '(.+?)';
    if (part === '{#}') return '(\\d.*?)';
    return part.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
  });
  return new RegExp(`^${parts.join('')}$`);
}
