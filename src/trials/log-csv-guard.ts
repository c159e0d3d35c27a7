/**
 * A spreadsheet runs a field that begins with one of these marks as a formula, so such a field gets a single quote in
 * front (OWASP ASVS 5.0, 1.2.10). A quote that stood there already gets one more, so that each comes back as it was.
 */
const WRITTEN = /^'*[=+\-@＝＋－＠\t\0]/u;
const READ = /^'+[=+\-@＝＋－＠\t\0]/u;

export function guarded(text: string): string {
  return WRITTEN.test(text) ? `'${text}` : text;
}

export function unguarded(field: string): string {
  return READ.test(field) ? field.slice(1) : field;
}
