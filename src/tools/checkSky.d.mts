export function findingsOfSky(folder: string): Promise<string[]>;
