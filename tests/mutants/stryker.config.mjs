// How every run of `npm run mutants` is set up; which files it changes and which tests judge them is told by the run.
export default {
  testRunner: 'vitest',
  plugins: ['@stryker-mutator/vitest-runner'],
  vitest: { configFile: 'tests/mutants/vitest.config.mjs', related: false },
  coverageAnalysis: 'perTest',
  // one test that fails is enough, and it knows its mutant: nobody reads further
  disableBail: false,
  disableTypeChecks: false,
  // two processors, and people at work on them
  concurrency: Number(process.env.HOLDFAST_MUTANTS_AT_ONCE ?? 1),
  tempDirName: '.cache/mutants',
  ignorePatterns: ['dist', 'dist-*', 'test-results', 'playwright-report', '.cache', '.ci'],
  reporters: ['json', 'progress-append-only'],
  jsonReporter: { fileName: '.cache/mutants.json' },
  // a busy machine takes its time: a mutant that hangs is known by how often its lines are passed
  timeoutMS: 15_000,
  allowConsoleColors: false,
  clearTextReporter: { allowColor: false },
  warnings: { slow: false },
  fileLogLevel: 'off',
  logLevel: 'warn',
}
