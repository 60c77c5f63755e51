// The language of the page: which table of labels is in use.
import type { Language } from './generated';
import { ENGLISH, SPANISH, type Labels } from './labels.generated';

/** Labels of the chosen language. A component reads them when it is created. */
export let labels: Labels = ENGLISH;

/** Tags of BCP 47. */
const TAGS: Record<Language, string> = { english: 'en', spanish: 'es' };

/** Chooses the language of all labels, before the first component is created. */
export function chooseLanguage(language: Language): void {
  labels = language === 'spanish' ? SPANISH : ENGLISH;
  document.documentElement.lang = TAGS[language];
}

/** `offPhoto` for `off_photo`. */
type CamelCase<Id extends string> = Id extends `${infer Word}_${infer Rest}`
  ? `${Word}${Capitalize<CamelCase<Rest>>}`
  : Id;

/** Returns the label of an id from a reply: `labelOf(labels.state, 'off_photo')`. */
export function labelOf<Id extends string>(group: Record<CamelCase<Id>, string>, id: Id): string {
  const key = id.replace(/_(\w)/g, (_, letter: string) => letter.toUpperCase());
  return group[key as CamelCase<Id>];
}
