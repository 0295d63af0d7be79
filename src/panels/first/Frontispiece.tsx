/** A plunger half-way out of its barrel, in section: ornament, so it is hidden from a screen reader. */
export function Frontispiece() {
  return (
    <svg className="frontispiece" viewBox="0 0 400 112" aria-hidden="true">
      <defs>
        <pattern
          id="front-hatch"
          width="6"
          height="6"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <line x1="0" x2="0" y1="0" y2="6" />
        </pattern>
      </defs>
      <path className="front-axis" d="M2 56H398" />
      <path
        className="front-cut"
        d="M176 16H330V24H372V44H300V44H286V28H268V44H176ZM176 96H330V88H372V68H300V68H286V84H268V68H176Z"
      />
      <path className="front-fuel" d="M268 28H286V44H268ZM268 68H286V84H268ZM300 45H372V67H300Z" />
      <path className="front-steel" d="M30 34H44V78H30ZM44 50H62V62H44ZM62 30H92V82H62ZM92 44H300V68H92Z" />
      <path className="front-helix" d="M300 53H268L236 44H216V68H252L268 59H300Z" />
      <path className="front-pin" d="M72 30H82V2H72Z" />
    </svg>
  );
}
