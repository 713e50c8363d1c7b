/** What the catalogue says to know, or to beware of, while doing something. */
import { type Act, practicesFor, type TrapDesign } from '@duskwatch/core';
import { localName } from '../../text/names.ts';
import { recordWords } from '../../text/record.ts';
import { Cited } from '../../ui/Cited.tsx';

export interface PracticesProps {
  readonly acts: readonly Act[];
  readonly insect?: string | null;
  readonly design?: TrapDesign | null;
  readonly title?: string;
  readonly only?: 'caution';
}

/** Cautions first; what holds for other insects or designs only is left out. */
export function Practices({ acts, insect = null, design = null, title = recordWords.cautions, only }: PracticesProps) {
  const said = acts
    .flatMap((act) => practicesFor(act))
    .filter(({ insects, designs, weight }) => {
      const ofInsect = insects === null || (insect !== null && insects.includes(insect));
      const ofDesign = designs === null || (design !== null && designs.includes(design));
      return ofInsect && ofDesign && (only === undefined || weight === only);
    })
    .sort((a, b) => Number(b.weight === 'caution') - Number(a.weight === 'caution'));
  if (said.length === 0) return null;
  return (
    <section className="practices">
      <h3>{title}</h3>
      <ul>
        {said.map(({ id, weight, text, source, standing }) => (
          <li key={id} className={weight}>
            {localName(text)}{' '}
            <small>
              <Cited source={source} standing={standing} />
            </small>
          </li>
        ))}
      </ul>
    </section>
  );
}
