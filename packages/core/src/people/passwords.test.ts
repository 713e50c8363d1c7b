import { expect, test } from 'vitest';
import { guessedParts, PASSWORD_MAX_LENGTH, passwordFault, tidyPassword } from './passwords.ts';

const CONTEXT = ['Ida Brook', 'Vale trap network'];

test.each([
  'three herons over wet clover',
  'all small letters here',
  'tractor~blue~kettle',
  '¿dónde están las ranas?',
  'ключ под старой яблоней',
])('%s is accepted: no capital, figure or sign is asked for', (password) => {
  expect(passwordFault(password, CONTEXT)).toBeNull();
});

test('fifteen characters are enough and fourteen are not, however many bytes they take', () => {
  expect(passwordFault('herons & clover')).toBeNull();
  expect(passwordFault('herons &clover')).toBe('too-short');
  expect(passwordFault('🦉🌾🚜🐞🌽🐝🌻🍂🌙🦋🌱🍅🎃🐛')).toBe('too-short');
  expect(passwordFault('🦉🌾🚜🐞🌽🐝🌻🍂🌙🦋🌱🍅🎃🐛🐌')).toBeNull();
});

test('a sentence of 256 characters is accepted whole', () => {
  const long = 'owls at dusk. '.repeat(20).slice(0, PASSWORD_MAX_LENGTH - 1);
  expect(passwordFault(`${long}!`)).toBeNull();
  expect(passwordFault(`${long}!!`)).toBe('too-long');
});

test.each([
  'passwordpassword',
  'Password Password 1',
  'P@ssw0rd12345678',
  '123456789012345',
  '987654321098765',
  'aaaaaaaaaaaaaaaaaaaa',
  'abcabcabcabcabcabc',
  'abcdefghijklmnopqrstuvwxyz',
  'qwertyuiopasdfghjkl',
  'correct horse battery staple',
  'Duskwatch2026!!!',
  'ida brook ida brook',
  'BrookIdaBrookIda26',
  'vale trap network 2026',
  'contraseña contraseña',
])('%s is easily guessed', (password) => {
  expect(passwordFault(password, CONTEXT)).toBe('easily-guessed');
});

test('é from two keyboards is one password', () => {
  expect(tidyPassword('caf\u00e9')).toBe(tidyPassword('cafe\u0301'));
});

test.each([
  ['Duskwatch2026!!!', ['duskwatch common', '2026 common', '!!! run'], 0],
  ['ida brook ida brook', ['idabrook repeated', 'ida context', 'brook context'], 0],
  ['corn moth trap 12345', ['corn common', 'moth common', 'trap common', '12345 run'], 0],
  ['summer of herons 26', ['summer common'], 10],
  ['three herons over wet clover', [], 24],
])('of %s it is said which words do not count', (password, parts, left) => {
  const said = guessedParts(password, CONTEXT);
  expect(said.guessed.map(({ part, why }) => `${part} ${why}`)).toEqual(parts);
  expect(said.left).toBe(left);
  expect(passwordFault(password, CONTEXT) === 'easily-guessed').toBe(left < said.needed);
});
