const hatches = [
  { id: 'hatch', size: 2.2, turn: 45, look: 'hatch' },
  { id: 'hatch-other', size: 1.6, turn: -45, look: 'hatch' },
  { id: 'hatch-light', size: 2.6, turn: -45, look: 'hatch light' },
];
const fuels = [
  { id: 'fuel-low', size: 3.2, tint: '#f1dcae' },
  { id: 'fuel-middle', size: 2, tint: '#e6c277' },
  { id: 'fuel-high', size: 1.2, tint: '#d8a845' },
];

/** Section hatching as in ISO 128 (neighbours differ in angle and spacing), and fuel by tint and dots. */
export function Patterns() {
  return (
    <defs>
      {hatches.map(({ id, size, turn, look }) => (
        <pattern
          key={id}
          id={id}
          width={size}
          height={size}
          patternUnits="userSpaceOnUse"
          patternTransform={`rotate(${turn})`}
        >
          <line x1="0" x2="0" y1="0" y2={size} className={look} />
        </pattern>
      ))}
      {fuels.map(({ id, size, tint }) => (
        <pattern key={id} id={id} width={size} height={size} patternUnits="userSpaceOnUse">
          <rect width={size} height={size} fill={tint} />
          <circle cx={size / 2} cy={size / 2} r="0.28" className="dot" />
        </pattern>
      ))}
    </defs>
  );
}
