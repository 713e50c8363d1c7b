export { skill } from './hindcast.mjs';
