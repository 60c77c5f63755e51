import svelte from 'eslint-plugin-svelte';
import ts from 'typescript-eslint';
import svelteConfig from './svelte.config.js';

// Words for people lie in src/words alone, a table a language, so that none is forgotten in one.
const FROM_THE_TABLE = 'words for people come from src/words';
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
  { selector: "CallExpression[callee.name='say'] > Literal:first-child", message: FROM_THE_TABLE },
  // A sentence or a label; the names of places are what a document is asked by, in any language.
  {
    selector:
      'Literal[value=/^(?!(Field book|Leave-site check|Job file)$)[A-Z][a-z]+.*( [a-z]+|[.?!])/]',
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
    ignores: ['src/words/**'],
    rules: { 'no-restricted-syntax': ['error', ...outsideTheTable] },
  },
);
