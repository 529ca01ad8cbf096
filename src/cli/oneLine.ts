/**
 * A message as one line that steers no terminal: line ends become blanks, other control characters a sign that something
 * stood there. Messages quote files from outside.
 */
export const oneLine = (text: string): string => text.replaceAll(/\s*[\n\r]\s*/g, " ").replaceAll(/\p{Cc}/gu, "\uFFFD");
