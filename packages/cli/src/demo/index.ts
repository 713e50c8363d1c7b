export { buildDemoProgram } from './program.ts';
export { demoTypingErrorCsv, type TypingErrorSheet } from './typing-error.ts';
