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
      text: 'The zip that a backup gave is looked at first: nothing changes before you confirm. The program as it is now is then set aside on the server and not lost.',
      choose: 'Choose a backup (zip)',
      sending: (share: string) => `${share} sent …`,
      looking: 'Checking every byte of it …',
      holds: (name: string, records: string, photos: string) =>
        `It holds ${name}: ${records} entries in its history, ${photos} photos.`,
      newest: (when: string) => `The last thing said in it: ${when}.`,
      people: (n: number) =>
        n === 0
          ? 'Nobody has an account in it.'
          : `${n} ${n === 1 ? 'person has' : 'people have'} an account in it: sign in as there.`,
      missing: (n: number) => `${n} ${n === 1 ? 'photo that it names is' : 'photos that it names are'} not in it.`,
      caution:
        'Everybody sees the program of the backup from then on. What was written after it is in the program that is set aside; phones offer again what they still hold.',
      confirm: 'Put it in the place of this program',
      drop: 'Leave it',
      beginning: 'The server begins anew …',
      done: (aside: string) => `Brought back. The program before it is in ${aside} on the server.`,
      reload: 'Open it',
    },
    making: (megabytes: string) => `${megabytes} MB so far …`,
    cancel: 'Cancel',
    saved: (name: string) => `Saved: ${name}`,
    unreachable: 'The server does not answer. Nothing was saved.',
    failed: 'That did not work:',
  },
};

export type ProgramWords = typeof programEn;
