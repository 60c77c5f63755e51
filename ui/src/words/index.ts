// Static words, one table a language. Sentences about a job come with the reply.
import { en } from './en';

export type Words = typeof en;

export const words: Words = en;
