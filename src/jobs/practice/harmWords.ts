const words: Readonly<Record<string, string>> = {
  'pumpBody faceDented': 'the body’s face dented by bare steel',
  'pumpBody faceCrushed': 'the body’s face crushed and its bore squeezed',
  'pumpBody cracked': 'the body cracked',
  'pumpBody threadPulled': 'the holder’s thread pulled',
  'pumpBody bleedThreadPulled': 'the bleed screw’s thread pulled',
  'plunger footBruised': 'the plunger’s foot bruised',
  'plunger helixChipped': 'the helix chipped',
  'cup cracked': 'the cup cracked',
  'pin bent': 'the control pin bent',
  'pin slightSet': 'the control pin a little bent',
  'pin draggedOutOfFork': 'the control pin bent as it was dragged out of the fork',
  'barrel squeezed': 'the barrel squeezed in the vice',
  'deliveryValve seatHammered': 'the delivery valve’s seat hammered by locked fuel',
  'flange cockedOnStuds': 'the flange pushed askew on its studs by the spring',
  'flange studPulled': 'a stud of the flange pulled',
  'holder coneCrushed': 'the cone of the union at the pump crushed',
  'injector bodyCrushed': 'the injector’s body crushed by its union',
};

/** A spoilt part in words, without a full stop. */
export const damageText = ({ part, what }: { part: string; what: string }): string =>
  words[`${part} ${what}`] ?? `${part} spoilt`;
