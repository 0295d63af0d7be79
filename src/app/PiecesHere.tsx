import { useEffect, useState, useSyncExternalStore } from 'react';
import { pieceIds, pieceList } from '../jobs/practice/list.ts';
import type { PracticeDesk } from '../panels/practice/desk.ts';
import { PiecesDue } from '../panels/practice/PiecesDue.tsx';
import type { Skill } from '../session/skill.ts';

const offers = pieceIds.map((id) => ({ id, ...pieceList[id] }));
const none: readonly Skill[] = [];
const still = () => () => undefined;

/** The practice pieces with what this device remembers of them; that comes in after the first screen is there. */
export function PiecesHere() {
  const [desk, setDesk] = useState<PracticeDesk | null>(null);
  useEffect(() => {
    let isShown = true;
    const open = async () => {
      const opened = await (await import('./practiceDesk.ts')).openPracticeDesk();
      if (isShown) setDesk(opened);
    };
    void open();
    return () => {
      isShown = false;
    };
  }, []);
  const skills = useSyncExternalStore(desk?.subscribe ?? still, desk?.skills ?? (() => none));
  return <PiecesDue pieces={offers} skills={skills} now={Date.now()} />;
}
