import tseslint from 'typescript-eslint';

// The core is pure: no clock, no chance, no input or output. The rooms' import
// boundaries are in .dependency-cruiser.cjs.
const noClockOrChance = [
  { selector: "CallExpression[callee.object.name='Date'][callee.property.name='now']", message: 'The core reads no clock: take a day or an instant as an argument.' },
  { selector: "NewExpression[callee.name='Date']", message: 'The core reads no clock: make dates in src/core/calendar from YYYY-MM-DD text.' },
  { selector: "CallExpression[callee.object.name='Math'][callee.property.name='random']", message: 'The core draws no chance of its own: take a seeded source (src/core/quantity).' },
];

export default tseslint.config(
  { ignores: ['build/**', 'dist/**', 'node_modules/**', 'docs/**', '**/*.cjs'] },
  {
    files: ['**/*.ts', '**/*.tsx'],
    extends: [tseslint.configs.recommendedTypeChecked],
    languageOptions: { parserOptions: { project: './tsconfig.json', tsconfigRootDir: import.meta.dirname } },
    rules: {
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': ['error', { considerDefaultExhaustiveForUnions: true }],
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/require-await': 'off',
      'max-lines': ['error', { max: 400, skipBlankLines: true, skipComments: true }],
      'max-params': ['error', 4],
    },
  },
  { files: ['src/core/**/*.ts'], ignores: ['**/*.test.ts'], rules: { 'no-restricted-syntax': ['error', ...noClockOrChance] } },
  { files: ['**/*.test.ts', 'scripts/**', 'bench/**'], rules: { 'max-lines': 'off', 'max-params': 'off' } },
);
