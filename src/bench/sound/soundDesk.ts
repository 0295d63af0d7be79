import type { Session } from '../../session/session.ts';
import { buzz } from './buzz.ts';
import { captionLine, STAYS } from './captionLine.ts';
import { followSound } from './follow.ts';
import { joltOf } from './jolts.ts';
import { keepSettings, readSettings, type SoundSettings } from './settings.ts';
import type { SoundId } from './sounds.ts';
import { createSpeaker } from './speaker.ts';
import type { Bed, Shot } from './voice.ts';

/** Everything that is heard of a session: loudspeaker, words on the screen, vibration, and what is chosen of these. */
export type SoundDesk = {
  settings(): SoundSettings;
  change(change: Partial<SoundSettings>): void;
  /** The words for what sounds now; '' for silence. */
  caption(): string;
  subscribe(listener: () => void): () => void;
  /** Lets a session be heard until the function that comes back is called. */
  follow(session: Session): () => void;
};

/** A bed fainter than this has no words, 0..1; how often words are looked at again, ms. */
const WORTH_WORDS = 0.012;
const LOOKS_AGAIN = 300;
/** Two jolts closer together than this are one, ms. */
const JOLT_PAUSE = 60;

/** One sound desk for the page. */
export function createSoundDesk(): SoundDesk {
  let settings = readSettings();
  let line = '';
  let timer: ReturnType<typeof setTimeout> | undefined;
  let jolted = Number.NEGATIVE_INFINITY;
  const speaker = createSpeaker();
  const when = new Map<SoundId, number>();
  const listeners = new Set<() => void>();
  const tell = () => {
    for (const listener of listeners) listener();
  };

  const refresh = () => {
    clearTimeout(timer);
    const now = performance.now();
    for (const [sound, at] of when) if (now - at >= STAYS) when.delete(sound);
    const next = captionLine(when, now);
    if (when.size > 0) timer = setTimeout(refresh, LOOKS_AGAIN);
    if (next === line) return;
    line = next;
    tell();
  };
  const word = (sounds: readonly SoundId[]) => {
    if (!settings.captions || sounds.length === 0) return;
    const isNew = sounds.some((sound) => !when.has(sound));
    const now = performance.now();
    for (const sound of sounds) when.set(sound, now);
    if (isNew) refresh();
  };
  const shots = (heard: readonly Shot[]) => {
    if (settings.sound) speaker.play(heard);
    word(heard.map(({ sound }) => sound));
    const jolt = settings.jolts ? joltOf(heard) : null;
    if (jolt === null || performance.now() - jolted < JOLT_PAUSE) return;
    jolted = performance.now();
    buzz(jolt);
  };
  const beds = (heard: readonly Bed[]) => {
    if (settings.sound) speaker.hold(heard);
    word(heard.filter(({ level }) => level > WORTH_WORDS).map(({ sound }) => sound));
  };

  return {
    settings: () => settings,
    change(change) {
      settings = { ...settings, ...change };
      keepSettings(settings);
      if (!settings.sound) speaker.hush();
      if (!settings.captions) when.clear();
      refresh();
      tell();
    },
    caption: () => line,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    follow: (session) => followSound(session, { shots, beds }),
  };
}
