const entities: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;" };

/**
 * The one place where text becomes markup: safe in an element and in a quoted attribute. Characters that XML forbids are left out.
 * @example escapeXml(`a < b & "c"`) // => "a &lt; b &amp; &quot;c&quot;"
 */
export function escapeXml(text: string): string {
  if (!special.test(text)) return text;
  return text.replace(forbidden, "").replace(/[&<>"']/g, (character) => entities[character] ?? "");
}

/** Whether there is anything to do: most labels are plain, and there are thousands of them. */
const special = /[^\t\n\r\u{20}-\u{D7FF}\u{E000}-\u{FFFD}\u{10000}-\u{10FFFF}]|[&<>"']/u;

// control characters save tab and line ends, lone surrogates and the two non-characters: none may stand in an XML 1.0 document (§2.2)
const forbidden = /[^\t\n\r\u{20}-\u{D7FF}\u{E000}-\u{FFFD}\u{10000}-\u{10FFFF}]/gu;
