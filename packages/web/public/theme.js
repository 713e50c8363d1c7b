// Runs before the first paint, so that a remembered theme does not flash. A file of its own: the page allows no inline script.
try {
  const theme = localStorage.getItem('duskwatch.theme');
  if (theme === 'light' || theme === 'dark') document.documentElement.dataset.theme = theme;
} catch {}

// The page allows no eval: its schemas must not even try, for the browser would report that as a fault.
globalThis.__zod_globalConfig = { jitless: true };
