import { useEffect, useId, useSyncExternalStore } from 'react';
import type { Session } from '../../session/session.ts';
import { canBuzz } from './buzz.ts';
import type { SoundDesk } from './soundDesk.ts';
import './sound.css';

/** Sound on and off in one press, with its words and vibration one step away. */
export function SoundControl({ desk }: { desk: SoundDesk }) {
  const settings = useSyncExternalStore(desk.subscribe, desk.settings);
  const id = useId();
  return (
    <div className="sound">
      <button
        type="button"
        className="button quiet sound-switch"
        aria-pressed={settings.sound}
        aria-label="Sound"
        title={settings.sound ? 'Sound is on' : 'Sound is off'}
        onClick={() => desk.change({ sound: !settings.sound })}
      >
        <svg viewBox="0 0 22 18" width="22" height="18" aria-hidden="true">
          <path className="sound-horn" d="M1 6.5H5L10 2.5V15.5L5 11.5H1Z" />
          {settings.sound ? (
            <path className="sound-wave" d="M13 6.2Q15 9 13 11.8M16 4Q19.5 9 16 14" />
          ) : (
            <path className="sound-wave" d="M13.5 6L19.5 12M19.5 6L13.5 12" />
          )}
        </svg>
      </button>
      <button
        type="button"
        className="button quiet sound-more"
        popoverTarget={id}
        aria-label="Captions and vibration"
        title="Captions and vibration"
      >
        <svg viewBox="0 0 10 6" width="10" height="6" aria-hidden="true">
          <path className="sound-wave" d="M1 1L5 5L9 1" />
        </svg>
      </button>
      <div id={id} popover="auto" className="sound-sheet">
        <label>
          <input
            type="checkbox"
            checked={settings.captions}
            onChange={() => desk.change({ captions: !settings.captions })}
          />
          Say in words what is heard
        </label>
        <label>
          <input
            type="checkbox"
            checked={settings.jolts}
            onChange={() => desk.change({ jolts: !settings.jolts })}
          />
          Vibrate on blows, slips and stops
          {canBuzz() ? '' : ' (nothing here that can)'}
        </label>
      </div>
    </div>
  );
}

/** Lets a session be heard, and shows in words what sounds. */
export function SoundOf({ desk, session }: { desk: SoundDesk; session: Session }) {
  useEffect(() => desk.follow(session), [desk, session]);
  return <SoundWords desk={desk} />;
}

/** What sounds now, in words. */
export function SoundWords({ desk }: { desk: SoundDesk }) {
  const line = useSyncExternalStore(desk.subscribe, desk.caption);
  return (
    <p className="sound-words" role="status" data-empty={line === ''}>
      {line === '' ? '' : `Heard: ${line}`}
    </p>
  );
}
