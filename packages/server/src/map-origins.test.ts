import { describe, expect, it } from 'vitest';
import { mapOrigin } from './map-origins.ts';
import { buildServer } from './server.ts';
import { memoryStore, smallProgram } from './small-program.testing.ts';

const policy = async (mapOrigins?: readonly string[]) => {
  const app = buildServer({ store: memoryStore(smallProgram()), ...(mapOrigins && { mapOrigins }) });
  return (await app.inject('/api/health')).headers['content-security-policy'];
};

describe('where the map may fetch its ground from', () => {
  it('is nowhere but this server, unless somebody says so', async () => {
    expect(await policy()).not.toContain('connect-src');
    expect(await policy()).toContain("default-src 'self'");
    expect(await policy(['https://tiles.example'])).toContain("connect-src 'self' https://tiles.example");
  });

  it('takes the origin off an address, and nothing that could say more in a policy', () => {
    expect(mapOrigin('https://tiles.example/{z}/{x}/{y}.png?key=1')).toBe('https://tiles.example');
    expect(mapOrigin('http://localhost:8080/county.pmtiles')).toBe('http://localhost:8080');
    for (const wrong of [
      'http://tiles.example/',
      'https://a b/',
      "https://x; script-src 'unsafe-inline'",
      'https://u:p@tiles.example',
      '*',
      'data:text/plain,a',
    ])
      expect(mapOrigin(wrong)).toBeNull();
  });
});
