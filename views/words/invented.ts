/** What is said of hours that belong to no company: a book that calls itself invented. Empty for anybody's own. */
export function inventedWords(version: string): string {
  return /\binvented\b/i.test(version)
    ? `Labour book ${version} is invented: its hours, factors and crew are nobody’s. Bid on hours of your own.`
    : '';
}
