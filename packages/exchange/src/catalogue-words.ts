export { catalogueWords } from '@duskwatch/core';
