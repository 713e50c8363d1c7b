export { skill } from './simulate.mjs';
