/** What is wrong with a calendar's lines by RFC 5545, which parsers tend to forgive. */
export function calendarFaults(text: string): string[] {
  const faults: string[] = [];
  if (!text.endsWith('\r\n') && !text.endsWith('END:VCALENDAR')) faults.push('does not end with a line');
  if (/[^\r]\n|\r[^\n]/.test(text)) faults.push('a line break that is not CRLF');
  const lines = text.split('\r\n');
  for (const line of lines) if (Buffer.byteLength(line) > 75) faults.push(`more than 75 octets: ${line}`);
  for (const line of lines) if (line.includes('\uFFFD')) faults.push(`a letter cut in two: ${line}`);
  const unfolded = text
    .replace(/\r\n[ \t]/g, '')
    .split('\r\n')
    .filter(Boolean);
  for (const line of unfolded) {
    if (!/^[A-Z0-9-]+(;[A-Z0-9-]+=("[^"]*"|[^";:,]*))*:/.test(line)) faults.push(`no content line: ${line}`);
    if (/\p{Cc}/u.test(line.replaceAll('\t', ''))) faults.push(`a control character: ${line}`);
    const [name, value] = [line.slice(0, line.search(/[;:]/)), line.slice(line.indexOf(':') + 1)];
    if (['SUMMARY', 'DESCRIPTION'].includes(name) && /(^|[^\\])(\\\\)*[,;]/.test(value)) faults.push(`not escaped: ${line}`);
  }
  if (unfolded[0] !== 'BEGIN:VCALENDAR' || unfolded.at(-1) !== 'END:VCALENDAR') faults.push('no calendar');
  if (countOf(unfolded, 'VERSION:2.0') !== 1) faults.push('VERSION:2.0 is not there once');
  if (unfolded.filter((line) => line.startsWith('PRODID:')).length !== 1) faults.push('PRODID is not there once');
  const events = unfolded.join('\n').split('BEGIN:VEVENT').slice(1);
  const uids = new Set<string>();
  for (const event of events) {
    for (const property of ['UID', 'DTSTAMP', 'SEQUENCE', 'LAST-MODIFIED', 'SUMMARY'])
      if (event.split('\n').filter((line) => line.startsWith(`${property}:`)).length !== 1)
        faults.push(`${property} is not there once:${event}`);
    for (const property of ['DTSTART', 'DTEND'])
      if (!new RegExp(`\n${property};VALUE=DATE:\\d{8}\n`).test(event)) faults.push(`${property} is no day:${event}`);
    for (const stamp of ['DTSTAMP', 'LAST-MODIFIED'])
      if (!new RegExp(`\n${stamp}:\\d{8}T\\d{6}Z\n`).test(event)) faults.push(`${stamp} is not in UTC:${event}`);
    const uid = /\nUID:(.*)\n/.exec(event)?.[1] ?? '';
    if (uids.has(uid)) faults.push(`twice: ${uid}`);
    uids.add(uid);
  }
  return faults;
}

const countOf = (lines: readonly string[], line: string): number => lines.filter((each) => each === line).length;
