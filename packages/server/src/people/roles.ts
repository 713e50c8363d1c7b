import type { Problem, Program, Role } from '@duskwatch/core';

/** What is wrong with the farms that go with a role: a grower has some, all of this program; nobody else has any. */
export function farmProblems(
  { role, farms }: { readonly role: Role; readonly farms: readonly string[] },
  program: Program,
): Problem[] {
  if (role !== 'grower') return farms.length === 0 ? [] : [problem(farms.join('; '), `no farms for a ${role}`)];
  if (farms.length === 0) return [problem('no farm', 'at least one farm for a grower')];
  const known = new Set(program.fields.map((field) => field.farm));
  return farms.filter((farm) => !known.has(farm)).map((farm) => problem(farm, 'a farm of this program'));
}

const problem = (got: string, expected: string): Problem => ({
  where: { parameter: 'farms' },
  got,
  expected,
  fix: 'take farms from /api/program',
});
