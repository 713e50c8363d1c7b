/** One field of sweet corn in silk under one mesh cone: 30 moths in the last six nights. Invented. */
export const smallFolder = {
  'fields.csv':
    'field_id,farm,name,crop,planted_on,time_zone\nnorth,Hill farm,North piece,sweet-corn,2026-05-10,America/Halifax\n',
  'stages.csv': 'field_id,observed_on,stage\nnorth,2026-07-12,silk\n',
  'traps.csv': 'trap_id,station,insect,design,hung_on,informs\nT1,S1,helicoverpa-zea,mesh-cone,2026-07-01,north\n',
  'lures.csv': 'trap_id,placed_on,life_days\nT1,2026-07-01,28\n',
  'checks.csv': [
    'trap_id,checked_on,target_count,other_count,condition,emptied,note',
    'T1,2026-07-08,14,2,fit,yes,',
    'T1,2026-07-14,30,0,fit,,a windy night',
    '',
  ].join('\n'),
} as const;
