export function writePractice(folder: string, horses: number): void
