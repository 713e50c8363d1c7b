import { isOnHomeScreen, type PhoneKind, phoneKind, useInstall } from '../browser/install.ts';
import { homeScreenWords as w } from '../text/home-screen.ts';
import { Folded } from '../ui/Folded.tsx';

const KINDS: readonly PhoneKind[] = ['iphone', 'android-chrome', 'android-firefox', 'android-samsung', 'other'];

/** How the app comes onto the home screen: on this phone first, on other kinds folded beneath. */
export function HomeScreen() {
  const install = useInstall();
  const here = phoneKind(navigator.userAgent);
  if (isOnHomeScreen()) return <p>{w.done}</p>;
  return (
    <>
      <p>{w.why}</p>
      {install ? (
        <p className="actions">
          <button type="button" className="button" onClick={install}>
            {w.add}
          </button>
        </p>
      ) : (
        <Steps kind={here} />
      )}
      <Folded title={w.others}>
        {KINDS.filter((kind) => kind !== here && kind !== 'other').map((kind) => (
          <section key={kind}>
            <h3>{w.kinds[kind].name}</h3>
            <Steps kind={kind} />
          </section>
        ))}
      </Folded>
    </>
  );
}

const Steps = ({ kind }: { kind: PhoneKind }) => (
  <ol className="steps">
    {w.kinds[kind].steps.map((step) => (
      <li key={step}>{step}</li>
    ))}
  </ol>
);
