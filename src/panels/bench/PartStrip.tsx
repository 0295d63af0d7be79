import { type ReactNode, useEffect, useRef, useState } from 'react';
import { ActForm } from '../acts/ActForm.tsx';
import { type Act, initialValues, type PickChoice } from '../acts/act.ts';
import { allActs, thingFor } from '../acts/catalogue.ts';
import { isInStrip } from '../acts/onPicture.ts';
import { sentence } from '../format.ts';
import { useCardFact, useFact, useJob, useView } from '../useJob.ts';

/**
 * The foot of the picture: what else can be done to the thing that was picked in it, beside what the hand or the tool
 * does there by itself, and the first caution of that thing.
 */
export function PartStrip({ heard }: { heard: ReactNode }) {
  const selected = useView((view) => view.selected);
  const inHand = useView((view) => view.inHand);
  const [act, setAct] = useState<Act | undefined>(undefined);
  return (
    <div className="bench-foot">
      <div className="foot-words" data-over-picture="true">
        <MomentCaution act={act} />
        {heard}
      </div>
      {/* What was opened belongs to what was picked. */}
      <Strip key={`${selected} ${inHand}`} selected={selected} inHand={inHand} onSaid={setAct} />
    </div>
  );
}

function Strip({
  selected,
  inHand,
  onSaid,
}: {
  selected: string | null;
  inHand: string;
  /** Told which act is looked at or open, for its caution. */
  onSaid: (act: Act | undefined) => void;
}) {
  const { session } = useJob();
  const isLoose = useFact(({ pump }) => pump.rest !== null);
  const shown = useFact((sim) => stripActs(selected, inHand, isLoose, (act) => act.shown?.(sim) ?? true));
  const [open, setOpen] = useState<string | null>(null);
  const [pointed, setPointed] = useState<string | null>(null);
  const acts = shown === '' ? [] : shown.split(' ').flatMap((id) => byId.get(id) ?? []);
  const form = acts.find(({ id }) => id === open);
  const options = form === undefined ? undefined : onlyPick(form);
  const said = form ?? acts.find(({ id }) => id === pointed);

  useEffect(() => {
    onSaid(said);
    return () => onSaid(undefined);
  }, [said, onSaid]);

  const press = (act: Act) => {
    if (act.choices.length > 0) setOpen(open === act.id ? null : act.id);
    else session.do(act.command({}, session.sim()));
  };
  const row = useRef<HTMLDivElement>(null);
  return (
    <>
      <div className="strip-above">
        {form === undefined || options !== undefined ? null : (
          <div className="strip-form">
            <ActForm key={form.id} act={form} start={initialValues(form)} />
          </div>
        )}
        {said === undefined || form !== undefined ? null : (
          <p className="strip-say" aria-hidden="true">
            {said.say(initialValues(said))}
          </p>
        )}
        {form === undefined || options === undefined ? null : (
          <ul aria-label={`${form.label}: ${options.label.toLowerCase()}`} className="strip-options">
            {options.options.map(({ value, label }) => (
              <li key={value}>
                <button
                  type="button"
                  className="button"
                  onClick={() => session.do(form.command({ [options.key]: value }, session.sim()))}
                >
                  {sentence(label)}
                </button>
              </li>
            ))}
          </ul>
        )}
      </div>
      <div
        className="strip"
        ref={row}
        onWheel={(event) => row.current?.scrollBy({ left: event.deltaY + event.deltaX })}
      >
        {acts.length === 0 ? <StripWords isPicked={selected !== null} /> : null}
        <ul aria-label="What can be done to what is picked">
          {acts.map((act) => (
            <li key={act.id}>
              <StripButton act={act} open={open} onPress={() => press(act)} onPoint={setPointed} />
            </li>
          ))}
        </ul>
      </div>
    </>
  );
}

/** What stands in an empty strip: how the picture is worked. */
function StripWords({ isPicked }: { isPicked: boolean }) {
  const isBegun = useCardFact((job) => job.log.length > 0);
  return (
    <p className="strip-hint">
      {isBegun || isPicked
        ? 'Press a part to see what can be done to it.'
        : 'Press a part or a tool to pick it; drag it to work with it. Drag beside it to walk round.'}
    </p>
  );
}

function StripButton({
  act,
  open,
  onPress,
  onPoint,
}: {
  act: Act;
  open: string | null;
  onPress: () => void;
  onPoint: (id: string | null) => void;
}) {
  const pressed = useFact((sim) => act.pressed?.(sim) ?? null);
  const hasForm = act.choices.length > 0;
  return (
    <button
      type="button"
      className="button"
      {...(pressed === null ? {} : { 'aria-pressed': pressed })}
      {...(hasForm ? { 'aria-expanded': open === act.id } : {})}
      aria-description={act.say(initialValues(act))}
      onClick={onPress}
      onPointerEnter={(event) => onPoint(event.pointerType === 'touch' ? null : act.id)}
      onPointerLeave={() => onPoint(null)}
      onFocus={(event) => onPoint(event.currentTarget.matches(':focus-visible') ? act.id : null)}
      onBlur={() => onPoint(null)}
    >
      {act.label}
      {hasForm ? '\u2026' : ''}
    </button>
  );
}

/** The choice of an act that has no other and is a list: its options can be pressed themselves. */
function onlyPick(act: Act): PickChoice | undefined {
  const [first, ...more] = act.choices;
  return first?.kind === 'pick' && more.length === 0 ? first : undefined;
}

const byId: ReadonlyMap<string, Act> = new Map(allActs().map(({ act }) => [act.id, act]));

/** Looks and handling come before what goes on beside the thing, and that before repairs. */
function lateness(id: string): number {
  if (id.startsWith('mend-')) return 2;
  return id === 'wait' || id.startsWith('place-') ? 1 : 0;
}

/** Ids of the acts that the strip lists, those at what is picked before those of the tool, with a space between. */
export function stripActs(
  selected: string | null,
  inHand: string,
  isLoose: boolean,
  isShown: (act: Act) => boolean,
): string {
  const at = (name: string) => [...byId.values()].filter(({ id }) => isInStrip(id, name, isLoose));
  return [...new Set([...(selected === null ? [] : at(selected)), ...at(inHand)])]
    .filter(isShown)
    .map(({ id }) => id)
    .sort((a, b) => lateness(a) - lateness(b))
    .join(' ');
}

/** The first caution of an act, or else of what is picked on the bench. */
function MomentCaution({ act }: { act: Act | undefined }) {
  const { session, core } = useJob();
  const selected = useView((view) => view.selected);
  const acts = act === undefined ? ((selected && thingFor(selected)?.thing.acts) ?? []) : [act];
  const ids = (acts || []).flatMap((one) => core.cautionsFor(one.command(initialValues(one), session.sim())));
  // Hot metal goes with every part that comes off; anything else says more.
  const first = ids.find((id) => id !== 'hotSurfaces') ?? ids[0];
  if (first === undefined) return null;
  return (
    <p className="bench-caution">
      <b>Caution</b> {core.cautionWords[first].title}.
    </p>
  );
}
