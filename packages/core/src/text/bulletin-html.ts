/** The bulletin as one page of HTML that mail readers show well: no script, no picture from elsewhere, styles on the parts themselves. */
import type { Bulletin } from './bulletin.ts';

const INK = '#23283f';
const BODY = `margin:0 auto;max-width:640px;padding:20px;color:${INK};background:#fff;font:16px/1.5 system-ui,-apple-system,'Segoe UI',sans-serif`;
const TITLE = 'margin:0 0 4px;font-size:26px;line-height:1.2';
const HEAD = `margin:22px 0 4px;padding-top:8px;border-top:2px solid ${INK};font-size:18px`;
const LINE = 'margin:0 0 6px';
const MARK = 'margin:0 0 12px;padding:6px 10px;background:#f6e3bd';

/** @param own blocks put in other words, by id; a line each. What is written is shown and never read as HTML. */
export function bulletinHtml(
  { language, title, week, invented, blocks }: Bulletin,
  own: Readonly<Record<string, string>> = {},
): string {
  const lines = (id: string, drafted: readonly string[]) =>
    (own[id]?.split('\n') ?? drafted)
      .filter((line) => line.trim() !== '')
      .map((line) => `<p style="${LINE}">${escaped(line)}</p>`)
      .join('\n');
  const parts = blocks.map(
    ({ id, title: head, lines: drafted }) => `<h2 style="${HEAD}">${escaped(head)}</h2>\n${lines(id, drafted)}`,
  );
  return `<!doctype html>
<html lang="${language}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<title>${escaped(title)}</title>
</head>
<body style="${BODY}">
${invented === null ? '' : `<p style="${MARK}"><b>${escaped(invented)}</b></p>\n`}<h1 style="${TITLE}">${escaped(title)}</h1>
<p style="${LINE}">${escaped(week)}</p>
${parts.join('\n')}
</body>
</html>
`;
}

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };
const escaped = (text: string): string => text.replace(/[&<>"']/g, (sign) => ESCAPES[sign]!);
