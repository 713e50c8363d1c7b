/**
 * The origin of an address, as a content policy names it: `https://tiles.example`. Null when it is none that begins
 * with https://, or with http:// on this machine.
 */
export function mapOrigin(address: string): string | null {
  if (!URL.canParse(address)) return null;
  const { protocol, hostname, username, password, origin } = new URL(address);
  if (username !== '' || password !== '') return null;
  const near = protocol === 'http:' && ['localhost', '127.0.0.1', '[::1]'].includes(hostname);
  return protocol === 'https:' || near ? origin : null;
}
