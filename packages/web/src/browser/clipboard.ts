/** Farms serve this page over plain http on their own network, where browsers close the clipboard API: then the old way. */
export async function copyText(text: string): Promise<boolean> {
  if (navigator.clipboard) {
    try {
      await navigator.clipboard.writeText(text);
      return true;
    } catch {}
  }
  const area = document.createElement('textarea');
  area.value = text;
  area.style.position = 'fixed';
  document.body.append(area);
  area.select();
  const copied = document.execCommand('copy');
  area.remove();
  return copied;
}
