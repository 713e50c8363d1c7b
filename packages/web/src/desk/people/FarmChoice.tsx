import { peopleWords } from '../../text/people.ts';

/** Which farms a grower sees. */
export function FarmChoice(props: {
  readonly legend: string;
  readonly farms: readonly string[];
  readonly chosen: readonly string[];
  readonly choose: (farms: readonly string[]) => void;
  readonly fault?: string | null;
}) {
  const { farms, chosen, choose } = props;
  return (
    <fieldset className="choices farm-choice" aria-invalid={props.fault ? true : undefined}>
      <legend>{props.legend}</legend>
      {farms.length === 0 && <p>{peopleWords.invite.noFarms}</p>}
      {farms.map((farm) => (
        <label key={farm}>
          <input
            type="checkbox"
            checked={chosen.includes(farm)}
            onChange={(event) => choose(event.currentTarget.checked ? [...chosen, farm] : chosen.filter((each) => each !== farm))}
          />
          {farm}
        </label>
      ))}
      {props.fault && <p className="entry-fault">{props.fault}</p>}
    </fieldset>
  );
}
