import { mkdir, mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A small sound program as files; tests spoil one of them. */
export const SOUND_FILES: Readonly<Record<string, string>> = {
  'fields.csv':
    'field_id,farm,name,crop,growth_habit,planted_on,harvest_on,latitude,longitude,time_zone\n' +
    'north,Invented Farm,North field,sweet-corn,,2025-05-10,2025-08-20,45.1,-64.3,America/Halifax\n' +
    'south,Invented Farm,South field,tomato,bush,,,,,\n',
  'stages.csv': 'field_id,observed_on,stage\nnorth,2025-07-10,silk\nsouth,2025-07-10,BBCH 63\n',
  'traps.csv':
    'trap_id,station,insect,design,latitude,longitude,hung_on,taken_down_on,informs\n' +
    'T1,Gate,helicoverpa-zea,mesh-cone,,,2025-06-01,,north;south\n' +
    'T2,Barn,ostrinia-nubilalis,wire-cone,,,2025-06-01,2025-08-01,north\n',
  'lures.csv': 'trap_id,placed_on,life_days\nT1,2025-06-01,14\nT2,2025-06-01,\n',
  'checks.csv':
    'trap_id,checked_on,target_count,other_count,condition,emptied,note\n' +
    'T1,2025-07-01,3,,fit,yes,\nT1,2025-07-03,,,unfit,,"down, wind"\nT2,2025-07-01,0,4,doubtful,no,\n',
  'skips.csv': 'trap_id,skipped_on,reason,note\nT1,2025-07-02,locked,\n',
  'weather.csv': 'source_id,date,tmin_c,tmax_c,precipitation_mm\nstation,2025-07-01,12.5,25,0\nstation,2025-07-02,,,\n',
  'samples.csv':
    'field_id,insect,sampled_on,kind,units_examined,units_infested,total_count\nnorth,ostrinia-nubilalis,2025-07-02,plants,100,12,\n',
  'treatments.csv':
    'field_id,insect,applied_on,product,protects_days,reentry_hours,preharvest_days\nnorth,helicoverpa-zea,2025-07-03,invented product,5,24,1\n',
  'decisions.csv':
    'field_id,insect,decided_on,decision,reason,note\nnorth,helicoverpa-zea,2025-07-02,not-treated,weather,storm\n',
  'rules.csv':
    'rule_id,crop,insect,design,stages,threshold,per,interval_days,valid_from,valid_to,source\n' +
    'own,sweet-corn,helicoverpa-zea,mesh-cone,silk;dry-silk,10,night,4,,,co-operative\n',
  'seasons.csv': 'season,insects,check_weekdays,lead_days,currency\n2026,helicoverpa-zea;ostrinia-nubilalis,mon;thu,7,USD\n',
  'plans.csv':
    'season,insect,area,design,traps,hang_on,take_down_on,lure_life_days,note\n' +
    '2026,helicoverpa-zea,all,mesh-cone,3,2026-06-15,,28,\n2026,helicoverpa-zea,north,,2,,2026-08-20,,wet corner\n',
  'prices.csv': 'item,of,price,currency,note\nlure,helicoverpa-zea,6.5,USD,\ngloves,any,0.4,USD,last order\n',
  'stock.csv':
    'stock_id,item,of,on_hand,counted_on,worn_out,opened_on,expires_on,storage\n' +
    'box 1,lure,helicoverpa-zea,12,2025-11-01,,,2026-12-31,freezer\nshed,trap,mesh-cone,4,2025-11-01,1,,,\n',
  'answers.csv': 'question,answer,answered_on,note\nunlikely-count T1 2025-07-01 3,right,2025-07-04,seen\n',
};

/** Writes the sound program with some files changed (text or bytes) or left out (null), and gives its folder. */
export async function folderOf(changes: Readonly<Record<string, string | Uint8Array | null>> = {}): Promise<string> {
  const dir = await mkdtemp(join(tmpdir(), 'program-'));
  await mkdir(dir, { recursive: true });
  for (const [file, content] of Object.entries({ ...SOUND_FILES, ...changes })) {
    if (content !== null) await writeFile(join(dir, file), content);
  }
  return dir;
}

/** A sound file with one piece of text put in place of another. */
export function spoilt(file: string, sound: string, spoilt: string): Record<string, string> {
  const text = SOUND_FILES[file]!;
  if (!text.includes(sound)) throw new Error(`${file} does not hold ${sound}`);
  return { [file]: text.replace(sound, spoilt) };
}
