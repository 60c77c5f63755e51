// Static words, one table a language. Sentences about a job come with the reply.
import type { Language } from '../generated';
import { en } from './en';

export type Words = typeof en;

/** The table in use. It is chosen before the first leaf is drawn, and changed by drawing anew. */
export let words: Words = en;

/** The name of a language, as a document says it. */
const CODES: Record<Language, string> = { english: 'en', spanish: 'es' };

/** Takes the table of a language; the second one is fetched only by who reads it. */
export async function speakLanguage(language: Language): Promise<void> {
  words = language === 'spanish' ? (await import('./es')).es : en;
  document.documentElement.lang = CODES[language];
}
