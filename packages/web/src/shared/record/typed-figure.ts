/** A figure as it was typed, with a point or a comma; NaN where there is none. */
export const typedFigure = (text: string): number => (text.trim() === '' ? Number.NaN : Number(text.trim().replace(',', '.')));
