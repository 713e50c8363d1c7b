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
      text: 'A sheet of counts or weather as you keep it, seen before anything of it is kept.',
    },
    export: {
      title: 'Export',
      text: 'Every record that you may read, with what each column holds: as a zipped folder of CSV tables, which Duskwatch and other programs read again, or as a workbook.',
      folder: 'Folder of tables (zip)',
      workbook: 'Workbook (XLSX)',
    },
    backup: {
      title: 'Backup',
      text: 'One file holds every record with its history, the people and the photos, checked before it is copied and after. Make one before the season and after it, and keep it away from this machine.',
      caution:
        'It holds names, places and the hashes of passwords: keep it where only those may read it who may read the program.',
      make: 'Make a backup (zip)',
    },
    restore: {
      title: 'Bring a backup back',
      text: 'On the machine that the server runs on, into a data folder of its own, from the unpacked zip:',
      command: 'npx duskwatch restore FOLDER --data NEW_FOLDER',
    },
    making: (megabytes: string) => `${megabytes} MB so far …`,
    cancel: 'Cancel',
    saved: (name: string) => `Saved: ${name}`,
    unreachable: 'The server does not answer. Nothing was saved.',
    failed: 'That did not work:',
  },
};

export type ProgramWords = typeof programEn;
