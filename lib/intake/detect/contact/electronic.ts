import type { Announced } from "../announced";
import type { Hit } from "../suspicion";

// local parts of e-mail addresses have at most 64 characters (RFC 5321 §4.5.3.1.1)
const email = /[A-Za-z0-9._%+'-]{1,64}@(?:[A-Za-z0-9-]{1,63}\.){1,8}[A-Za-z]{2,24}(?![A-Za-z0-9])/;
const url = /(?<![a-z0-9])(?:[a-z][a-z0-9+.-]{1,11}:\/\/[^\s]{2}|www\.[a-z0-9-]{2})/i;
const ipv4 = /(?<![\w.])(\d{1,3})\.(\d{1,3})\.(\d{1,3})\.(\d{1,3})(?![\w]|\.\d)/g;
const ipv6Token = /^(?:[0-9a-f]{0,4}:){2,7}[0-9a-f]{0,4}$/i;

/** E-mail addresses, URLs and IP addresses in a clean text. */
export function findElectronic(text: string, announced: Announced): readonly Hit[] {
  const hits: Hit[] = [];
  // both need a character that most cells don't have
  if (text.includes("@") && email.test(text)) hits.push({ kind: "email", proof: true });
  if ((text.includes("://") || /www\./i.test(text)) && url.test(text)) hits.push({ kind: "url", proof: true });
  if (hasIpv4(text, announced.ip) || (text.includes("::") && text.split(" ").some(isIpv6)) || isFullIpv6(text))
    hits.push({ kind: "ip-address", announced: announced.ip });
  return hits;
}

// four single digits are numbers of a protocol or version unless something says IP
function hasIpv4(text: string, announced: boolean): boolean {
  for (const [whole, ...octets] of text.matchAll(ipv4))
    if (octets.every((octet) => Number(octet) <= 255 && !/^0\d/.test(octet)) && (announced || whole.length > 7)) return true;
  return false;
}

function isIpv6(token: string): boolean {
  return ipv6Token.test(token) && /[0-9a-f]{2}/i.test(token);
}

function isFullIpv6(text: string): boolean {
  return text.length < 40 && text.split(":").length === 8 && isIpv6(text);
}
