import js from '@eslint/js'
import prettier from 'eslint-config-prettier'
import vue from 'eslint-plugin-vue'
import a11y from 'eslint-plugin-vuejs-accessibility'
import ts from 'typescript-eslint'

/** Forbids imports that match any of the patterns, with the reason a reader sees. */
const ban = (files, patterns) => ({
  files,
  rules: { 'no-restricted-imports': ['error', { patterns }] },
})

const noApp = {
  regex: '(^|/)app(/|$)',
  message: 'Nothing imports the app: arrows run from app, cli and worker to the engine.',
}
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
      'node_modules/',
      'test-results/',
      'playwright-report/',
      '.cache/',
    ],
  },
  js.configs.recommended,
  ...ts.configs.strictTypeChecked,
  ...vue.configs['flat/recommended'],
  ...a11y.configs['flat/recommended'],
  {
    languageOptions: {
      parserOptions: {
        parser: ts.parser,
        projectService: true,
        extraFileExtensions: ['.vue'],
      },
    },
    rules: {
      'no-undef': 'off',
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      'vuejs-accessibility/label-has-for': ['error', { required: { some: ['nesting', 'id'] } }],
    },
  },
  { files: ['**/*.js', '**/*.mjs'], ...ts.configs.disableTypeChecked },
  ban(
    ['src/engine/**'],
    [
      {
        regex: '(^|/)(solvers|worker|app|cli|dev)(/|$)',
        message:
          'The engine is pure and knows no solver, screen or shell: pass what it needs as an argument.',
      },
      {
        regex: '^(?!\\.{1,2}/)(?!zod$).*',
        message: 'The engine imports zod and itself, nothing else.',
      },
    ],
  ),
  ban(
    ['src/engine/paper/markup.ts'],
    [
      {
        regex: '^(?!@remix-run/html-template$).*',
        message: 'Markup is the one door to the template that escapes, and knows nothing else.',
      },
    ],
  ),
  {
    files: ['src/engine/**'],
    rules: {
      'no-restricted-globals': [
        'error',
        ...['window', 'document', 'process', 'console', 'performance', 'setTimeout', 'fetch'].map(
          (name) => ({
            name,
            message: 'The engine is pure: no DOM, Node, clock or console.',
          }),
        ),
      ],
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'random', message: 'The same file must give the same answer.' },
        { object: 'Date', property: 'now', message: 'The engine has no clock.' },
      ],
    },
  },
  ban(
    ['src/engine/proof/**'],
    [
      {
        regex: '(^|/)(program|solver|plan)(/|$)',
        message:
          'The proof re-checks the plan with code of its own: it shares only types and arithmetic.',
      },
      {
        regex: '^(?!\\.{1,2}/)(?!zod$).*',
        message: 'The engine imports zod and itself, nothing else.',
      },
    ],
  ),
  ban(['src/solvers/**'], [noApp, noNode, noVue]),
  ban(['src/worker/**'], [noApp, noNode, noVue]),
  ban(['src/cli/**'], [noApp, noVue]),
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
