// What ESLint asks of every script of the site and of the build. Types are TypeScript's own matter: site/types/.

import js from "@eslint/js";
import globals from "globals";

const rules = {
  "array-callback-return": "error",
  "consistent-return": "off", // TypeScript knows better what a function gives
  curly: ["error", "multi-line"],
  "default-case-last": "error",
  eqeqeq: "error",
  "no-console": "error",
  "no-constructor-return": "error",
  "no-else-return": "error",
  "no-eval": "error",
  "no-implicit-globals": "error",
  "no-implied-eval": "error",
  "no-new-func": "error",
  "no-param-reassign": "error",
  "no-promise-executor-return": "off", // a promise that is kept by an arrow function's call
  "no-self-compare": "error",
  "no-shadow": "error",
  "no-throw-literal": "error",
  "no-unused-expressions": ["error", { allowShortCircuit: true, allowTernary: true }],
  "no-unused-vars": ["error", { argsIgnorePattern: "^_" }],
  "no-use-before-define": ["error", { functions: false, variables: false }],
  "no-useless-return": "error",
  "no-var": "error",
  "object-shorthand": "error",
  "prefer-const": "error",
  "prefer-rest-params": "error",
  "prefer-template": "error",
  radix: "error",
  "require-atomic-updates": "off", // it cannot see that an older answer is dropped by its edition
};

const WORKERS = ["js/worker.js", "js/ahead.js", "js/memory.js", "js/part.js", "js/cold.js", "js/photo-worker.js", "making/stock/worker.js"];

export default [
  { ignores: ["node_modules/", "types/"] },
  { linterOptions: { reportUnusedDisableDirectives: "error" } },
  { ...js.configs.recommended, rules: { ...js.configs.recommended.rules, ...rules } },
  { files: ["js/**/*.js", "making/stock/page.js"], ignores: WORKERS, languageOptions: { globals: globals.browser } },
  { files: WORKERS, languageOptions: { globals: globals.worker } },
  { files: ["js/before-paint.js", "js/handout-player.js"], languageOptions: { sourceType: "script" } },
  {
    // What the oldest browsers must understand, to say that they are too old.
    files: ["js/watch.js"],
    languageOptions: { sourceType: "script", ecmaVersion: 5 },
    rules: {
      "no-unused-vars": ["error", { caughtErrorsIgnorePattern: "^_" }],
      "no-var": "off",
      "object-shorthand": "off",
      "prefer-const": "off",
      "prefer-template": "off",
    },
  },
  {
    files: ["service-worker.js"],
    languageOptions: { sourceType: "script", globals: { ...globals.serviceworker, EDITION: "readonly" } },
    // A service worker's top level is its own: no page shares it.
    rules: { "no-implicit-globals": "off" },
  },
  { files: ["making/*.mjs"], languageOptions: { globals: globals.node }, rules: { "no-console": "off" } },
];
