import { designFacts, type RecordKind, TRAP_DESIGNS, type TrapDesign } from '@duskwatch/core';
import { useLengthUnit } from '../../browser/preferences.ts';
import { lengthText } from '../../format/length.ts';
import { localName } from '../../text/names.ts';
import { recordWords } from '../../text/record.ts';
import { trapsWords } from '../../text/traps.ts';
import { useWording } from '../../text/wording.ts';
import { Cited } from '../../ui/Cited.tsx';
import type { FormTexts } from './form-texts.ts';
import { Practices } from './Practices.tsx';
import { type OfCrop, SamplingAside } from './SamplingAside.tsx';
import { ServiceAside } from './ServiceAside.tsx';

/** What to know while writing a record of a kind, beside its boxes. */
export function Aside({ kind, draft, field }: { kind: RecordKind; draft: FormTexts; field: OfCrop | null }) {
  const insect = draft.insect || null;
  switch (kind) {
    case 'traps':
      return <SitingAside design={designOf(draft.design)} insect={insect} />;
    case 'lures':
      return <Practices acts={['handling-lures']} />;
    case 'checks':
      return <Practices acts={['checking', 'handling-moths']} />;
    case 'samples':
      return (
        <>
          {field && <SamplingAside field={field} insect={insect ?? ''} />}
          <Practices acts={['walking-fields']} />
        </>
      );
    case 'stages':
      return <Practices acts={['walking-fields']} />;
    case 'sources':
      return <ServiceAside service={draft.service} />;
    case 'treatments':
      return (
        <>
          <p className="practices-lead">{recordWords.label}</p>
          <Practices acts={['treating']} />
        </>
      );
    default:
      return null;
  }
}

const designOf = (text: string | undefined): TrapDesign | null => TRAP_DESIGNS.find((design) => design === text) ?? null;

export function SitingAside({ design, insect }: { design: TrapDesign | null; insect: string | null }) {
  const w = trapsWords.siting;
  const wording = useWording();
  const [unit] = useLengthUnit();
  const facts = design && designFacts(design);
  return (
    <>
      <section className="practices">
        <h3>{w.title}</h3>
        {facts ? (
          <>
            <p>
              <b>{wording.design[facts.design]}.</b>{' '}
              {facts.heightM === null ? w.noHeight : w.height(lengthText(facts.heightM, unit))} {localName(facts.siting)}{' '}
              {facts.costUsd && w.cost(String(facts.costUsd[0]), String(facts.costUsd[1]))}
            </p>
            {facts.note && <p>{localName(facts.note)}</p>}
            <p>
              <small>
                <Cited source={facts.source} standing={facts.standing} />
              </small>
            </p>
          </>
        ) : (
          <p>{w.choose}</p>
        )}
      </section>
      <Practices acts={['setting-posts', 'handling-lures']} only="caution" insect={insect} design={design} />
      <Practices acts={['siting', 'handling-lures']} title={w.where} insect={insect} design={design} />
    </>
  );
}
