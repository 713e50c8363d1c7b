import { userInfo } from 'node:os';

/** Who writes at the database itself, by the name the machine knows them by. */
export function whoWrites(): string {
  try {
    return userInfo().username;
  } catch {
    return 'import';
  }
}
