/** A text that this device keeps; where storage is closed to us, nothing is kept. */
export function rememberedText(key: string) {
  return {
    read(): string {
      try {
        return localStorage.getItem(key) ?? '';
      } catch {
        return '';
      }
    },
    write(text: string): void {
      try {
        localStorage.setItem(key, text);
      } catch {}
    },
  };
}
