export * from './names.ts';
export * from './passwords.ts';
export * from './person.ts';
