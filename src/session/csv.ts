/** A leading sign by which a spreadsheet would take a text for a formula is made harmless. */
const harmless = (text: string): string => text.replace(/^[=+\-@\t\r]/, "'$&");

/** A text as a field of comma-separated values (RFC 4180), quoted always. */
export const quotedField = (text: string): string => `"${harmless(text).replaceAll('"', '""')}"`;

/** A text as a field of comma-separated values (RFC 4180), quoted where it has to be. */
export const plainField = (text: string): string =>
  /[",\r\n]/.test(text) ? quotedField(text) : harmless(text);
