/** Every string of the program's own pages in English. */
export const programEn = {
  rules: {
    title: 'Rules and insects',
    sub: 'What advice rests on: which published rules speak, and where each fact comes from.',
  },
  weather: {
    title: 'Weather',
    sub: 'Where the temperatures come from that heat is summed of, and which fields wait for more.',
    loading: 'Reading the weather …',
    table: 'Weather sources',
    source: 'Source',
    from: 'From',
    to: 'Newest day',
    behind: (days: number) => (days === 0 ? 'up to date' : `${days} ${days === 1 ? 'day' : 'days'} behind`),
    missing: 'Days missing',
    newestGap: (date: string) => `newest ${date}`,
    forecast: 'Forecast to',
    fields: 'Fields',
    none: 'No weather yet. Without it nothing is dated by heat.',
    without: (n: number) => `Without a source (${n})`,
    withoutText: 'Nothing is dated by heat there. Name a weather source in the field’s record.',
  },
  data: {
    title: 'Import and export',
    sub: 'How records come in, and how they go out.',
    import: {
      title: 'Import',
      open: 'Import a sheet',
      text: 'A sheet of counts or weather as you keep it, seen before anything of it is kept. A folder of CSV tables comes in by command:',
      command: 'npx duskwatch import FOLDER',
    },
    export: { title: 'Export', text: 'The records as tables for a spreadsheet:', command: 'npx duskwatch export FOLDER' },
    backup: {
      title: 'Backup',
      text: 'One file holds every record with its history. Make one before the season, after it, and keep it elsewhere:',
      command: 'npx duskwatch backup FILE',
    },
  },
};

export type ProgramWords = typeof programEn;
