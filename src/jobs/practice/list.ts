/** What the first screen says of each practice piece, in the order in which the work comes to them. */
export const pieceList = {
  'compression-by-hand': {
    title: 'Compression by hand',
    use: 'Tell good compression from weak, and which way the air goes.',
  },
  'stuck-or-free': {
    title: 'Stuck or free?',
    use: 'Tell a seized plunger from a free one in the hand.',
  },
  'read-the-pump': {
    title: 'Read the pump',
    use: 'Tell from a pump in the hand what is wrong with it.',
  },
  'which-end': {
    title: 'Which end?',
    use: 'Tell which way a plunger is stuck, and so which end to strike.',
  },
  'how-hard': {
    title: 'How hard?',
    use: 'Move a stuck plunger with the gentlest blow that will do it.',
  },
  'pin-in-the-slot': {
    title: 'Pin in the slot',
    use: 'Refit the pump with its pin in the fork, and prove it.',
  },
  'torque-by-feel': {
    title: 'Torque by feel',
    use: 'Tighten nut, union and holder by the feel of the spanner.',
  },
  'bleed-until-clear': {
    title: 'Bleed until clear',
    use: 'Drive the air out of the line, and stop when fuel comes solid.',
  },
} as const;
export type PieceId = keyof typeof pieceList;

/** The names of all pieces, in the list's order. */
export const pieceIds = [
  'compression-by-hand',
  'stuck-or-free',
  'read-the-pump',
  'which-end',
  'how-hard',
  'pin-in-the-slot',
  'torque-by-feel',
  'bleed-until-clear',
] as const satisfies readonly PieceId[];
