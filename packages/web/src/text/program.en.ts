/** Every string of the program's own pages in English. */
export const programEn = {
  rules: {
    title: 'Rules and insects',
    sub: 'What advice rests on: which published rules speak, and where each fact comes from.',
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
