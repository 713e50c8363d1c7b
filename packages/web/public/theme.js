// Runs before the first paint, so that a remembered theme does not flash. A file of its own: the page allows no inline script.
try {
  const theme = localStorage.getItem('duskwatch.theme');
  if (theme === 'light' || theme === 'dark') document.documentElement.dataset.theme = theme;
} catch {}
