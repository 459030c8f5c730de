import js from '@eslint/js'
import prettier from 'eslint-config-prettier'
import vue from 'eslint-plugin-vue'
import a11y from 'eslint-plugin-vuejs-accessibility'
import ts from 'typescript-eslint'
import { downward } from './src/dev/downward.mjs'

/** Forbids imports that match any of the patterns, with the reason a reader sees. */
const ban = (files, patterns) => ({
  files,
  rules: { 'no-restricted-imports': ['error', { patterns }] },
})

const typedRules = {
  '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
  // a member that is new in a union is then missed by nobody: no silent default over one
  '@typescript-eslint/switch-exhaustiveness-check': [
    'error',
    { allowDefaultCaseForExhaustiveSwitch: false, considerDefaultExhaustiveForUnions: false },
  ],
}

/** No screen, shell, clock or chance: the same file gives the same answer everywhere. */
const pure = ['mechanics', 'language', 'document', 'engine', 'scene', 'text', 'paper'].map(
  (room) => `src/${room}/**`,
)
const noNode = {
  group: ['node:*'],
  message: 'This code also runs in a browser; Node belongs to src/cli and src/dev.',
}
const noVue = {
  group: ['vue', 'vue/*', 'pinia'],
  message: 'Only src/app draws with Vue; results are plain data everywhere else.',
}

export default ts.config(
  {
    ignores: [
      'dist/',
      'dist-cli/',
      'dist-library/',
      'node_modules/',
      'test-results/',
      'playwright-report/',
      '.cache/',
    ],
  },
  js.configs.recommended,
  ...ts.configs.strict,
  { rules: { 'no-undef': 'off' } },
  // the type check has it, with the templates
  { files: ['**/*.ts', '**/*.vue'], rules: { '@typescript-eslint/no-unused-vars': 'off' } },
  // with types: components here; all else by oxlint, which needs a tenth of the time and does not read components
  ts.config({
    files: ['**/*.vue'],
    extends: [
      ...ts.configs.strictTypeChecked,
      ...vue.configs['flat/recommended'],
      ...a11y.configs['flat/recommended'],
    ],
    languageOptions: {
      parserOptions: {
        parser: ts.parser,
        projectService: true,
        extraFileExtensions: ['.vue'],
      },
    },
    rules: {
      'no-undef': 'off',
      '@typescript-eslint/no-unused-vars': 'off',
      ...typedRules,
      'vuejs-accessibility/label-has-for': ['error', { required: { some: ['nesting', 'id'] } }],
    },
  }),
  {
    files: ['src/**'],
    plugins: { holdfast: { rules: { downward } } },
    rules: { 'holdfast/downward': 'error' },
  },
  ban(pure, [
    {
      regex: '^(?!\\.{1,2}/)(?!zod/mini$).*',
      message: 'This code is pure: it imports zod/mini and files of its own, nothing else.',
    },
  ]),
  {
    files: pure,
    rules: {
      'no-restricted-globals': [
        'error',
        ...['window', 'document', 'process', 'console', 'performance', 'setTimeout', 'fetch'].map(
          (name) => ({
            name,
            message: 'This code is pure: no DOM, Node, clock or console.',
          }),
        ),
      ],
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'random', message: 'The same file must give the same answer.' },
        { object: 'Date', property: 'now', message: 'This code has no clock.' },
      ],
    },
  },
  ban(
    ['src/paper/markup.ts'],
    [
      {
        regex: '^(?!@remix-run/html-template$).*',
        message: 'Markup is the one door to the template that escapes, and knows nothing else.',
      },
    ],
  ),
  ban(
    ['src/paper/modules.ts'],
    [
      {
        regex: '^(?!uqr$).*',
        message: 'One door to what sets squares, and it knows nothing else.',
      },
    ],
  ),
  ban(
    ['src/engine/proof/**'],
    [
      {
        regex: '(^|/)(language|document|engine|lp|plan|rounding|infeasible|studies|work)(/|$)',
        message:
          'The proof re-checks the plan with code of its own: it shares only types and growth.',
      },
      {
        regex: '^(?!\\.{1,2}/)(?!zod/mini$).*',
        message: 'This code is pure: it imports zod/mini and files of its own, nothing else.',
      },
    ],
  ),
  ban(['src/solvers/**'], [noNode, noVue]),
  ban(['src/worker/**'], [noNode, noVue]),
  ban(['src/cli/**'], [noVue]),
  ban(
    ['tests/second/**'],
    [
      {
        regex: '(^|/)src(/|$)',
        message:
          'The second builder is written from the contract alone; importing src would copy its faults.',
      },
    ],
  ),
  prettier,
)
