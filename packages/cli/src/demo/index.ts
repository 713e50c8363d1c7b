export { buildDemoProgram } from './program.ts';
export { demoTypingErrorCsv } from './typing-error.ts';
