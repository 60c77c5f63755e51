import svelte from 'eslint-plugin-svelte';
import ts from 'typescript-eslint';
import svelteConfig from './svelte.config.js';

// Every text for people is a label or comes with a reply, in both languages.
const FROM_THE_TABLE = 'texts for people are labels of crates/words or come with a reply';
const outsideTheTable = [
  {
    selector: 'SvelteText[value=/[A-Za-z]{2}/]:not(SvelteStyleElement SvelteText)',
    message: FROM_THE_TABLE,
  },
  {
    selector:
      'SvelteAttribute[key.name=/^(aria-label|aria-description|alt|title|placeholder)$/] > SvelteLiteral[value=/[A-Za-z]{2}/]',
    message: FROM_THE_TABLE,
  },
  {
    selector: "CallExpression[callee.name='showNews'] > Literal:first-child",
    message: FROM_THE_TABLE,
  },
  // A sentence or a label. Ids of places and recorded reasons are the same in every language.
  {
    selector:
      'Literal[value=/^(?!(Field book|Leave-site check|Job file|No access|Coming back)$)[A-Z][a-z]+.*( [a-z]+|[.?!])/]',
    message: FROM_THE_TABLE,
  },
  { selector: 'TemplateElement[value.raw=/[A-Z][a-z]+ [a-z]{2,}/]', message: FROM_THE_TABLE },
];

export default ts.config(
  { ignores: ['dist', 'node_modules', 'src/generated.ts', 'src/labels.generated.ts'] },
  ...ts.configs.recommended,
  ...svelte.configs.recommended,
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: { parserOptions: { parser: ts.parser, svelteConfig } },
  },
  {
    rules: {
      'no-console': 'error',
      eqeqeq: 'error',
      'svelte/no-at-html-tags': 'error',
    },
  },
  {
    files: ['src/**/*.svelte', 'src/**/*.ts'],
    ignores: ['src/words/**', 'src/texts.ts'],
    rules: { 'no-restricted-syntax': ['error', ...outsideTheTable] },
  },
);
